using System.Globalization;

namespace Killed;

/// <summary>
/// <c>write FOLDER SEED SERIAL</c> does deed after deed upon a club; <c>open FOLDER COUNT</c> opens the clubs 0, 1, 2 ... below a folder, which are made or
/// brought to the present form by that. Either says a line when it begins and one after each thing that is done, and is meant to be killed.
/// </summary>
internal static class Start
{
    private static int Main(string[] args)
    {
        switch (args)
        {
            case ["write", string folder, string seed, string serial]:
                Writer.Write(folder, int.Parse(seed, CultureInfo.InvariantCulture), int.Parse(serial, CultureInfo.InvariantCulture), Console.Out);
                return 0;
            case ["open", string clubs, string count]:
                Writer.Open(clubs, int.Parse(count, CultureInfo.InvariantCulture), Console.Out);
                return 0;
            default:
                Console.Error.WriteLine("This program is started by the tests and by: dotnet run --project bench/Bench -c Release -- kills 100");
                return 2;
        }
    }
}
