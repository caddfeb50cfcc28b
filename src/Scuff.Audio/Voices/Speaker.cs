using System.Collections.Concurrent;
using Scuff.Audio.Signals;

namespace Scuff.Audio.Voices;

/// <summary>
/// Says words with the first of several voices that can say them all; words that no voice has in one piece are put together from the longest pieces
/// there are. What nobody can say is told, never silently left out.
/// </summary>
public sealed class Speaker
{
    // between two clips, and where a comma stands
    private const double JoinSeconds = 0.012;
    private const double PauseSeconds = 0.05;

    private readonly ValueList<IVoice> _voices;
    private readonly ConcurrentDictionary<string, Spoken> _said = new(StringComparer.Ordinal);

    /// <summary>A speaker.</summary>
    /// <param name="voices">Its voices, the dearest first.</param>
    /// <exception cref="ArgumentException">There is no voice.</exception>
    public Speaker(params ValueList<IVoice> voices)
    {
        if (voices.Count == 0)
        {
            throw new ArgumentException("One voice at least.", nameof(voices));
        }

        _voices = voices;
    }

    /// <summary>Says words.</summary>
    public Spoken Say(string words) => _said.GetOrAdd(words, Join);

    /// <summary>Says many words ahead of their need, on all cores: programs of the machine take their time.</summary>
    public void Prepare(IEnumerable<string> words, CancellationToken cancel = default)
        => Parallel.ForEach(words.Distinct(StringComparer.Ordinal), new ParallelOptions { CancellationToken = cancel }, w => Say(w));

    /// <summary>
    /// How long words take, in seconds, without saying them where that is known. Words that nobody can say take no time.
    /// </summary>
    public double SecondsToSay(string words)
    {
        if (_said.TryGetValue(words, out Spoken? said))
        {
            return said.Sound.Seconds;
        }

        List<(string Phrase, bool AfterPause)> pieces = Split(words, (v, p) => v.SecondsOf(p) is not null, out IVoice? alone, out _);
        double seconds = 0;
        foreach ((string phrase, bool afterPause) in pieces)
        {
            seconds += (seconds == 0 ? 0 : Gap(afterPause))
                + (alone is not null ? alone.SecondsOf(phrase)!.Value : _voices.Select(v => v.SecondsOf(phrase)).First(s => s is not null)!.Value);
        }

        return seconds;
    }

    private Spoken Join(string words)
    {
        List<(string Phrase, bool AfterPause)> pieces = Split(words, (v, p) => v.Say(p) is not null, out IVoice? alone, out List<string> unsaid);
        List<float> all = [];
        foreach ((string phrase, bool afterPause) in pieces)
        {
            MonoAudio piece = alone is not null ? alone.Say(phrase)! : _voices.Select(v => v.Say(phrase)).First(s => s is not null)!;
            if (all.Count > 0)
            {
                all.AddRange(new float[(int)(Gap(afterPause) * IVoice.Rate)]);
            }

            all.AddRange(piece.Samples);
        }

        return new Spoken(new MonoAudio([.. all], IVoice.Rate), unsaid.ToValueList());
    }

    private static double Gap(bool afterPause) => afterPause ? PauseSeconds : JoinSeconds;

    // The words in pieces that can be said, by one voice alone where one has them all, else by several.
    private List<(string Phrase, bool AfterPause)> Split(string words, Func<IVoice, string, bool> has, out IVoice? alone, out List<string> unsaid)
    {
        List<(string Word, bool AfterPause)> tokens = SpokenText.Tokens(words);
        foreach (IVoice voice in _voices)
        {
            List<(string, bool)> pieces = Cover(tokens, p => has(voice, p), out unsaid);
            if (unsaid.Count == 0)
            {
                alone = voice;
                return pieces;
            }
        }

        alone = null;
        return Cover(tokens, p => _voices.Any(v => has(v, p)), out unsaid);
    }

    // From the left, the longest piece each time.
    private static List<(string Phrase, bool AfterPause)> Cover(List<(string Word, bool AfterPause)> tokens, Func<string, bool> has, out List<string> missing)
    {
        List<(string Phrase, bool AfterPause)> pieces = [];
        missing = [];
        int at = 0;
        while (at < tokens.Count)
        {
            int length = tokens.Count - at;
            while (length > 0 && !has(string.Join(' ', tokens.Skip(at).Take(length).Select(t => t.Word))))
            {
                length--;
            }

            if (length == 0)
            {
                missing.Add(tokens[at++].Word);
                continue;
            }

            pieces.Add((string.Join(' ', tokens.Skip(at).Take(length).Select(t => t.Word)), tokens[at].AfterPause));
            at += length;
        }

        return pieces;
    }
}
