namespace Scuff.App.Web.Contract;

/// <summary>Easier ways for the moves that were asked about.</summary>
/// <param name="Sought">What was looked for, in words: <c>above beginner</c>.</param>
/// <param name="Moves">The moves, in the order of the text.</param>
internal sealed record EaseAnswer(string Sought, IReadOnlyList<EasedMove> Moves);

/// <summary>A move that is worth making easier.</summary>
/// <param name="Place">Where, in words.</param>
/// <param name="From">Where its words start in the text.</param>
/// <param name="To">Where they end.</param>
/// <param name="Words">What is danced.</param>
/// <param name="Level">The easiest level that allows it.</param>
/// <param name="Offers">Easier ways, best first.</param>
/// <param name="None">What to say where there is none; empty where there are some.</param>
internal sealed record EasedMove(string Place, int From, int To, string Words, string Level, IReadOnlyList<EasedOffer> Offers, string None);

/// <summary>An easier way that can be taken.</summary>
/// <param name="Counts">The counts it replaces, as printed.</param>
/// <param name="Words">What is danced instead.</param>
/// <param name="Reasons">Why it is easier and what stays.</param>
/// <param name="Take">What writes it into the text as an option.</param>
internal sealed record EasedOffer(string Counts, string Words, IReadOnlyList<string> Reasons, ReadFix Take);

/// <summary>What the page asks to have made easier.</summary>
/// <param name="Text">The text.</param>
/// <param name="For">level, knees, turns or speed.</param>
/// <param name="Level">The level of the class.</param>
/// <param name="From">Where what is asked about starts in the text; null for the whole dance.</param>
/// <param name="To">Where it ends.</param>
internal sealed record EaseQuestion(string Text, string For, string Level, int? From, int? To);

/// <summary>A version of a dance as a text of its own.</summary>
/// <param name="Text">The text.</param>
/// <param name="Remarks">What she should look at, a sentence each.</param>
internal sealed record VersionAnswer(string Text, IReadOnlyList<string> Remarks);
