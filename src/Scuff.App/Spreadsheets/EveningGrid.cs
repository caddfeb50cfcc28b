using Scuff.Analysis.Levels;
using Scuff.Dances;
using Scuff.Sheets;

namespace Scuff.App.Spreadsheets;

/// <summary>The programme of an evening as a table.</summary>
internal static class EveningGrid
{
    /// <summary>A row for each line.</summary>
    public static Grid Of(EveningPaper paper) => new(
        "Programme",
        [
            new("Begins", 8), new("What", 9), new("Dance", 28), new("Level", 18), new("Other dance", 28), new("Other level", 18), new("Song", 34), new("Artist", 24),
            new("Takes", 8), new("Music", 8), new("Why here", 60), new("Note", 40),
        ],
        [
            .. paper.Lines.Select(l => (ValueList<GridCell>)
            [
                new GridCell.Clock(paper.Starts.Add(TimeSpan.FromSeconds(l.StartSeconds))),
                new GridCell.Text(l.Kind switch
                {
                    EveningLineKind.Lesson => "lesson",
                    EveningLineKind.Rest => "rest",
                    _ => l.IsSplit ? "split" : "dance",
                }),
                new GridCell.Text(l.Title),
                LevelOf(l.Level),
                new GridCell.Text(l.OtherTitle),
                LevelOf(l.OtherLevel),
                new GridCell.Text(l.Song),
                new GridCell.Text(l.Artist),
                new GridCell.Length(l.Seconds),
                l.SongSeconds > 0 ? new GridCell.Length(l.SongSeconds) : GridCell.None,
                new GridCell.Text(string.Join(' ', l.Reasons)),
                new GridCell.Text(l.Note),
            ]),
        ]);

    private static GridCell LevelOf(Level? level) => level is { } known ? new GridCell.Text(LevelPhrases.Name(known)) : GridCell.None;
}
