namespace Scuff.App.Handouts;

/// <summary>Knows one or more forms to take something out in. A class that implements it, with a constructor without arguments, is found; no list names it.</summary>
/// <typeparam name="T">What is taken out: <see cref="EveningOut"/> or <see cref="BookOut"/>.</typeparam>
internal interface IHandoutMaker<T>
{
    /// <summary>The forms.</summary>
    IEnumerable<Handout<T>> Handouts { get; }
}
