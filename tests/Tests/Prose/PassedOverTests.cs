using Scuff.Dances;
using Scuff.Diagnostics;
using Scuff.Prose;

namespace Tests.Prose;

/// <summary>What a pasted sheet says beside the steps is passed over only where it can change nothing of what is danced.</summary>
public sealed class PassedOverTests
{
    private const string Eight = "1-4 vine R, touch L\n5-8 vine L, touch R\n";

    [Theory]
    [InlineData("Start again and enjoy!")]
    [InlineData("START OVER")]
    [InlineData("With thanks to the harbour band")]
    [InlineData("--------")]
    public void Closing_words_and_talk_change_nothing(string line)
        => Assert.DoesNotContain(DanceReader.Read($"Net Loft\n\n{Eight}{line}\n").Report.Complaints, c => c.Severity >= Severity.Warning);

    [Theory]
    [InlineData("Repeat it all with the left foot")]
    [InlineData("Keep the left hand up")]
    [InlineData("Start with a jazz box next")]
    [InlineData("Leave out the last part at the end")]
    [InlineData("Only the chorus")]
    public void What_may_change_the_dance_is_asked_about(string line)
        => Assert.Contains(DanceReader.Read($"Net Loft\n\n{Eight}{line}\n").Report.Complaints, c => c.Severity >= Severity.Question);

    [Theory]
    [InlineData("1-2 Start with right foot forward, step left together")]
    [InlineData("1-2 Right foot first: step R forward, step L together")]
    [InlineData("1 LF free, step R forward\n2 step L together")]
    public void The_first_counts_are_danced_though_they_tell_how_to_start(string lines)
    {
        Draft draft = DanceReader.Read($"Net Loft\n\n{lines}\n3-4 step R back, touch L together\n");

        Assert.Contains(draft.Dance.Sections.SelectMany(s => s.Lines), l => l.Label is "1-2" or "1");
    }
}
