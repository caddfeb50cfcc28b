using Scuff.Dances;
using Scuff.Diagnostics;
using Scuff.Prose;

namespace Tests.Prose;

/// <summary>What a teacher says between the steps stands beside them, and is told; what may be a step is asked about.</summary>
public sealed class TalkTests
{
    [Theory]
    [InlineData("1-2 Rock R forward, recover L. Brakes on, Brian!", 2)]
    [InlineData("1-2 step R to side, touch L together (a wave to Mavis on the door costs nothing)", 2)]
    [InlineData("3-4 walk forward right, left and get your breath back", 2)]
    [InlineData("1-4 vine R, touch L. Our Janet calls this one the crab.", 4)]
    [InlineData("1-2 Then, Barbara permitting, touch R heel forward, hitch R knee", 2)]
    [InlineData("1-2 step R forward, recover L as gracefully as your knees allow", 2)]
    public void What_is_said_moves_nobody(string line, int moves)
    {
        Draft draft = Read(line);
        Assert.DoesNotContain(draft.Report.Complaints, c => c.Severity >= Severity.Warning);
        Assert.Equal(moves, draft.Dance.Sections.Single().Steps.Count());
    }

    [Theory]
    [InlineData("1-3 walk R, L, glorp forward")]
    [InlineData("1-2 rock R forward, blorf")]
    [InlineData("1-2 step R forward, zapple left knee")]
    [InlineData("1-2 walk R, L. Flurb.")]
    public void What_may_be_a_step_is_asked_about(string line) => Assert.Contains(Read(line).Report.Complaints, c => c.Severity >= Severity.Warning);

    [Fact]
    public void Tidied_it_keeps_every_word()
    {
        string tidied = DanceWriter.Tidy(Read("1-2 Rock R forward, recover L. Brakes on, Brian!\n3-4 step R to side, touch L together (a wave to Mavis on the door costs nothing)"));
        Assert.All(["Brakes on", "Brian", "a wave to Mavis on the door costs nothing"], words => Assert.Contains(words, tidied, StringComparison.Ordinal));
        Assert.Equal(tidied, DanceWriter.Tidy(DanceReader.Read(tidied)));
    }

    [Fact]
    public void What_is_taken_for_talk_is_told()
        => Assert.Contains(Read("1-2 Rock R forward, recover L. Brakes on, Brian!").Report.Complaints, c => c is { Severity: Severity.Hint, Rule.Id: "reading/words-left-out" });

    private static Draft Read(string line) => DanceReader.Read($"Talk\n\nsection 1\n{line}\n");
}
