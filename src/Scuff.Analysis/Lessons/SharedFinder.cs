using Scuff.Analysis.Likeness;

namespace Scuff.Analysis.Lessons;

/// <summary>Finds the sections of a dance that a class knows from others.</summary>
internal static class SharedFinder
{
    /// <summary>For each section the one of the known dances that is most like it, in the order of the dance; sections that no known dance has are left out.</summary>
    public static ValueList<LessonShared> Of(DanceAnalysis analysis, ValueList<LearnedDance> known)
    {
        if (known.Count == 0)
        {
            return [];
        }

        FeetPrint print = FeetPrint.Read(FeetPrint.Of(analysis));
        (string Title, ValueList<SharedSection> Shared)[] others = [.. known.Select(k => (k.Title, DanceLikeness.Between(print, FeetPrint.Read(k.Feet)).Shared))];
        return print.Sections
            .Select(section => others
                .SelectMany(o => o.Shared.Where(s => s.Section == section.Name).Select(s => new LessonShared(o.Title, s)))
                .OrderByDescending(s => s.Shared.Percent)
                .ThenBy(s => s.Shared.IsMirrored)
                .FirstOrDefault())
            .OfType<LessonShared>()
            .ToValueList();
    }
}
