using Scuff.App.Complaints;
using Scuff.App.Files;
using Scuff.Diagnostics;

namespace Scuff.App.Commands;

/// <summary>How commands other than check tell that a dance has complaints: one line, and where to read them.</summary>
internal static class Complained
{
    /// <summary>Tells it, on standard error.</summary>
    /// <returns>The exit code that the report calls for.</returns>
    public static int Tell(DanceInput input, Report report, Terminal terminal)
    {
        if (report.IsClean)
        {
            return ExitCode.Clean;
        }

        string check = input.IsStandardInput ? $"{CommandTree.Name} check" : $"{CommandTree.Name} check {input.Name}";
        terminal.Tell($"{input.Spoken} has {Summary.Standing(report)}; see: {check}");
        return ExitCode.Complaints;
    }
}
