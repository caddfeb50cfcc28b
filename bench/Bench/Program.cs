using System.Globalization;
using Bench;
using BenchmarkDotNet.Running;

// "quick" prints the best of several; "dances FOLDER COUNT" writes different dances for bench/cold.sh;
// "score CORPUS ESTIMATES" measures estimates against a corpus;
// "estimate CORPUS OUT" hears a corpus (bench/estimate); "songs FOLDER" writes songs of our own band with their truth;
// "weigh CORPUS…" finds the weights for boundaries and labels again, "swing CORPUS…" counts swing by true beats, "stages FILE" says where the time of hearing goes;
// "wordings FOLDER…" counts the wording corpus, "rewrites FOLDER… every N" its lines typed otherwise, "read START LINE…" shows what is read from lines,
// "terms LINE…" what their words are taken for,
// "thousand FOLDER" says where the time of many dances goes;
// "fit DANCES" times fitting and matching, "planted DANCES SEED COUNT [heard]" counts the planted breaks that are found;
// "library DANCES TRACKS [FOLDER]" times searches in a large club, "library-open FOLDER" the opening of one;
// "book [FOLDER]" times what a screen asks of twenty years of classes; "kills COUNT [PROGRAM]" kills a writing program again and again (tests/Killed);
// "calls DANCES" times the calls of a whole track; "night DANCES QUESTIONS SECONDS" says how good the programmes of drawn evenings are;
// "voice FOLDER FILE" renders the clips of the calling voice (bench/voice/README.md); "calltrack" times the call track of a song of four minutes;
// "hall PROGRAM SCREENS" fills the hall of a built program; anything else chooses among the classes with a [Benchmark] (--filter)
switch (args)
{
    case ["quick"]:
        Quick.Run(Console.Out);
        break;
    case ["dances", string dances, string count]:
        Directory.CreateDirectory(dances);
        for (int i = 1; i <= int.Parse(count, CultureInfo.InvariantCulture); i++)
        {
            File.WriteAllText(Path.Combine(dances, string.Create(CultureInfo.InvariantCulture, $"{i:D4}.dance")), Texts.Dance(i, 4 + (i % 5)));
        }

        break;
    case ["score", string corpus, string estimates]:
        Scores.Print(Console.Out, corpus, estimates);
        break;
    case ["estimate", string songs, string answers, .. string[] options]:
        return Estimates.Write(Console.Out, songs, answers, options) ? 0 : 2;
    case ["weigh", .. string[] known]:
        Weigh.Sections(Console.Out, known);
        break;
    case ["swing", .. string[] swung]:
        Weigh.Swing(Console.Out, swung);
        break;
    case ["stages", string file]:
        Stages.Measure(Console.Out, file);
        break;
    case ["wordings", .. string[] corpora]:
        Wordings.Count(Console.Out, corpora);
        break;
    case ["rewrites", string every, .. string[] corpora]:
        Wordings.Rewritten(Console.Out, int.Parse(every, CultureInfo.InvariantCulture), corpora);
        break;
    case ["read", string start, .. string[] lines]:
        Wordings.Show(Console.Out, start, lines);
        break;
    case ["terms", .. string[] words]:
        Wordings.Terms(Console.Out, words);
        break;
    case ["thousand", string many]:
        Thousand.Measure(Console.Out, many);
        break;
    case ["fit", string demo]:
        Fits.Speed(Console.Out, demo);
        break;
    case ["planted", string demo, string seed, string many, .. string[] heard]:
        Fits.Planted(Console.Out, demo, seed, int.Parse(many, CultureInfo.InvariantCulture), heard is ["heard"]);
        break;
    case ["calls", string called]:
        Calls.Speed(Console.Out, called);
        break;
    case ["voice", string words, string pack]:
        VoiceClips.Write(Console.Out, words, pack);
        break;
    case ["night", string many, string questions, string seconds]:
        Nights.Measure(Console.Out, int.Parse(many, CultureInfo.InvariantCulture), int.Parse(questions, CultureInfo.InvariantCulture), double.Parse(seconds, CultureInfo.InvariantCulture));
        break;
    case ["calltrack"]:
        CallTracks.Measure(Console.Out);
        break;
    case ["hall", string program, string screens]:
        await Hall.Run(Console.Out, program, int.Parse(screens, CultureInfo.InvariantCulture)).ConfigureAwait(false);
        break;
    case ["songs", string folder, .. string[] options]:
        return SongCorpus.Write(Console.Out, folder, options) ? 0 : 2;
    case ["library", string many, string songs, .. string[] place]:
        Library.Measure(Console.Out, int.Parse(many, CultureInfo.InvariantCulture), int.Parse(songs, CultureInfo.InvariantCulture), place.Length > 0 ? place[0] : null);
        break;
    case ["library-open", string club]:
        Library.Open(Console.Out, club);
        break;
    case ["book", .. string[] club]:
        Book.Measure(Console.Out, club.Length > 0 ? club[0] : null);
        break;
    case ["kills", string kills, .. string[] writer]:
        return Kills.Run(Console.Out, int.Parse(kills, CultureInfo.InvariantCulture), writer.Length > 0 ? Path.GetFullPath(writer[0]) : null) ? 0 : 1;
    default:
        BenchmarkSwitcher.FromAssembly(typeof(Program).Assembly).Run(args);
        break;
}

return 0;
