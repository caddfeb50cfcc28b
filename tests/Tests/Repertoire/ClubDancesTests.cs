using Scuff.Repertoire;

namespace Tests.Repertoire;

public sealed class ClubDancesTests : IDisposable
{
    private const string Text = """
        Harbour Box
        by: Ann Demo
        level: beginner
        counts: 16
        walls: 2
        rhythm: cha cha
        tempo: 112.5
        track: "Out of Harbour" by The Demo Band
        1-2 step R, touch L
        """;

    private readonly ClubHouse _house = new();

    private ClubDances Dances => _house.Club.Dances;

    public void Dispose() => _house.Dispose();

    [Fact]
    public void What_was_added_is_there_after_closing_and_opening()
    {
        StoredDance added = Dances.Add(Text, "page");
        Dances.SetTags(added.Id, ["Monday class", "easy"]);

        _house.Reopen();
        StoredDance? found = Dances.Get(added.Id);

        Assert.NotNull(found);
        Assert.Equal(Text, found.Text);
        Assert.Equal(1, found.Revision);
        Assert.Equal(["Monday class", "easy"], found.Row.Tags);
        Assert.Equal(_house.Clock.GetUtcNow(), found.Row.SavedAt);
        Assert.Equal(new PlainReader().Read(Text), found.Row.Facts);
    }

    [Fact]
    public void Line_ends_become_line_feeds_and_a_zero_cuts_nothing_short()
        => Assert.Equal("A\nb\nc\n\uFFFDd", Dances.Get(Dances.Add("A\r\nb\rc\n\0d", "page").Id)!.Text);

    [Theory]
    [InlineData("")]
    [InlineData("d")]
    [InlineData("d0")]
    [InlineData("d01")]
    [InlineData("d-1")]
    [InlineData("d99")]
    [InlineData("d99999999999999999999999")]
    [InlineData("t1")]
    [InlineData("../club.db")]
    public void An_id_of_no_dance_finds_none(string id)
    {
        Dances.Add(Text, "page");

        Assert.Null(Dances.Get(id));
        Assert.IsType<SaveOutcome.Gone>(Dances.Save(id, "x", 1, "page"));
        Assert.False(Dances.Remove(id));
        Assert.Null(Dances.SetTags(id, ["a"]));
        Assert.Null(Dances.KeepVersion(id, "a"));
        Assert.Empty(Dances.Versions(id));
        Assert.Null(Dances.VersionText(id, 1));
    }

    [Fact]
    public void A_save_upon_the_present_revision_is_kept()
    {
        string id = Dances.Add(Text, "page").Id;

        SaveOutcome outcome = Dances.Save(id, "Other Box", 1, "page");

        Assert.Equal(new SaveOutcome.Saved(2), outcome);
        Assert.Equal("Other Box", Dances.Get(id)!.Text);
        Assert.Equal("Other Box", Dances.Get(id)!.Row.Facts.Title);
    }

    [Fact]
    public void A_save_upon_an_older_revision_is_refused_and_shows_what_is_there()
    {
        string id = Dances.Add(Text, "page").Id;
        Dances.Save(id, "Box of the first page", 1, "first");

        SaveOutcome outcome = Dances.Save(id, "Box of the second page", 1, "second");

        Assert.Equal(new SaveOutcome.Changed(2, "Box of the first page"), outcome);
        Assert.Equal("Box of the first page", Dances.Get(id)!.Text);
    }

    [Fact]
    public void A_refused_text_saved_all_the_same_leaves_the_other_as_a_version()
    {
        string id = Dances.Add(Text, "page").Id;
        Dances.Save(id, "Box of the first page", 1, "first");

        Dances.Save(id, "Box of the second page", 2, "second");

        Assert.Equal("Box of the second page", Dances.Get(id)!.Text);
        Assert.Contains("Box of the first page", Dances.Versions(id).Select(v => Dances.VersionText(id, v.Number)));
    }

    [Fact]
    public void A_save_whose_answer_was_lost_can_be_sent_again()
    {
        string id = Dances.Add(Text, "page").Id;
        Dances.Save(id, "Box", 1, "page");

        Assert.Equal(new SaveOutcome.Saved(2), Dances.Save(id, "Box", 1, "page"));
        Assert.Equal(2, Dances.Get(id)!.Revision);
    }

    [Fact]
    public void Saves_of_one_session_leave_one_version()
    {
        string id = Dances.Add("one", "page").Id;
        for (int i = 1; i <= 20; i++)
        {
            _house.Clock.GoOn(TimeSpan.FromMinutes(9));
            Dances.Save(id, $"text {i}", i, "page");
        }

        Assert.Empty(Dances.Versions(id));

        _house.Clock.GoOn(TimeSpan.FromMinutes(11));
        Dances.Save(id, "next day", 21, "page");

        DanceVersion version = Assert.Single(Dances.Versions(id));
        Assert.Equal("text 20", Dances.VersionText(id, version.Number));
        Assert.Equal("", version.Name);
        Assert.Equal(_house.Clock.GetUtcNow() - TimeSpan.FromMinutes(11), version.SavedAt);
    }

    [Fact]
    public void Going_back_to_a_version_loses_nothing()
    {
        string id = Dances.Add("first", "page").Id;
        int kept = Dances.KeepVersion(id, " as  taught ")!.Number;
        Dances.Save(id, "second", 1, "page");

        SaveOutcome outcome = Dances.GoBack(id, kept, 2);

        Assert.Equal(new SaveOutcome.Saved(3), outcome);
        Assert.Equal("first", Dances.Get(id)!.Text);
        Assert.Equal(["", "as taught"], Dances.Versions(id).Select(v => v.Name));
        Assert.Equal("second", Dances.VersionText(id, Dances.Versions(id)[0].Number));
        Assert.Equal(ClubTroubleKind.NotFound, Assert.Throws<ClubTrouble>(() => Dances.GoBack(id, 77, 3)).Kind);
    }

    [Fact]
    public void A_version_without_a_name_gets_one_so_that_it_stays()
    {
        string id = Dances.Add("first", "page").Id;

        Assert.Equal("kept 2026-03-02 18:30", Dances.KeepVersion(id, "  ")!.Name);
    }

    [Fact]
    public void A_dance_goes_to_the_bin_and_comes_back_with_all_it_had()
    {
        string id = Dances.Add(Text, "page").Id;
        Dances.SetTags(id, ["easy"]);
        Dances.KeepVersion(id, "kept");

        Assert.True(Dances.Remove(id));
        Assert.False(Dances.Remove(id));
        Assert.Empty(Dances.Search(new DanceQuery()).Rows);
        Assert.Equal(id, Assert.Single(Dances.Search(new DanceQuery { InBin = true }).Rows).Id);
        Assert.Equal(_house.Clock.GetUtcNow(), Dances.Get(id)!.Row.RemovedAt);

        Assert.True(Dances.BringBack(id));
        Assert.False(Dances.BringBack(id));
        Assert.Equal(["easy"], Assert.Single(Dances.Search(new DanceQuery()).Rows).Tags);
        Assert.Single(Dances.Versions(id));
    }

    [Fact]
    public void Only_an_emptied_bin_is_empty_and_its_ids_are_not_given_again()
    {
        string gone = Dances.Add(Text, "page").Id;
        string stays = Dances.Add("Other", "page").Id;
        Dances.KeepVersion(gone, "kept");
        Dances.Remove(gone);

        Assert.Equal(1, Dances.EmptyBin());
        Assert.Equal(0, Dances.EmptyBin());

        Assert.Null(Dances.Get(gone));
        Assert.Empty(Dances.Versions(gone));
        Assert.IsType<SaveOutcome.Gone>(Dances.Save(gone, "x", 1, "page"));
        Assert.NotNull(Dances.Get(stays));
        Assert.Equal(0, Dances.Search(new DanceQuery { Words = "harbour", InBin = true }).Total);
        Dances.Remove(stays);
        Dances.EmptyBin();
        Assert.DoesNotContain(Dances.Add("Next", "page").Id, new[] { gone, stays });
    }

    [Fact]
    public void Saving_a_dance_of_the_bin_brings_it_back()
    {
        string id = Dances.Add(Text, "page").Id;
        Dances.Remove(id);

        Assert.Equal(new SaveOutcome.Saved(2), Dances.Save(id, "Box", 1, "page"));
        Assert.Null(Dances.Get(id)!.Row.RemovedAt);
    }

    [Fact]
    public void Tags_are_tidied_and_counted_whatever_their_case()
    {
        string a = Dances.Add("A", "page").Id;
        string b = Dances.Add("B", "page").Id;

        Assert.Equal(["Monday class", "easy"], Dances.SetTags(a, ["  Monday\n class ", "", "easy", "EASY"]));
        Dances.SetTags(b, ["Easy"]);

        Assert.Equal([("Easy", 2), ("Monday class", 1)], Dances.Tags().Select(t => (t.Tag, t.Count)));
        Assert.Equal(2, Dances.Search(new DanceQuery { Tag = "éasy" }).Total);
        Assert.Equal(0, Dances.Search(new DanceQuery { Tag = "eas" }).Total);
        Assert.Equal(1, Dances.Search(new DanceQuery { Words = "mond" }).Total);
        Dances.SetTags(a, []);
        Assert.Equal(0, Dances.Search(new DanceQuery { Words = "mond" }).Total);
        Assert.Equal(1, Dances.Get(a)!.Revision);
    }

    [Fact]
    public void Duplicates_are_told_with_the_surest_reason()
    {
        string box = Dances.Add("Box\n1-2 step R, touch L", "page").Id;
        string sameText = Dances.Add("BOX\n\n  1-2  step r, touch l", "page").Id;
        string sameSteps = Dances.Add("Crate\n1-2 step R, touch L", "page").Id;
        string sameTitle = Dances.Add("Böx\n1-2 rock R, recover", "page").Id;
        string binned = Dances.Add("Box\n1-2 step R, touch L", "page").Id;
        Dances.Add("Alone\n1-2 hold, hold", "page");
        Dances.Add("No steps", "page");
        Dances.Add("No steps either", "page");
        Dances.Remove(binned);

        Assert.Equal(
            [
                (DuplicateReason.SameText, $"{box} {sameText}"),
                (DuplicateReason.SameSteps, $"{box} {sameSteps}"),
                (DuplicateReason.SameTitle, $"{box} {sameText} {sameTitle}"),
            ],
            Dances.Duplicates().Select(d => (d.Reason, string.Join(' ', d.Ids))));
    }

    [Fact]
    public void Facts_of_an_older_program_are_read_again()
    {
        string id = Dances.Add(Text, "page").Id;
        Dances.Add("Other", "page");
        Assert.Empty(Dances.NeedingFacts());

        PlainReader newer = new("2");
        _house.Reopen(newer);

        Assert.Equal(2, Dances.NeedingFacts().Count);
        Assert.Equal(0, Dances.RefreshFacts(new CancellationToken(canceled: true)));
        Assert.Equal(2, Dances.RefreshFacts(CancellationToken.None));
        Assert.Empty(Dances.NeedingFacts());
        Assert.Equal(2, newer.TextsRead);
        Assert.Equal(1, Dances.Get(id)!.Revision);
        Assert.Empty(Dances.Versions(id));
    }

    [Fact]
    public void Every_change_is_told_after_it_is_there()
    {
        List<string> told = [];
        string id = Dances.Add(Text, "page").Id;
        _house.Club.Changed += (_, change) => told.Add($"{string.Join(' ', change.Dances)}: {Dances.Get(id)?.Text}");

        Dances.Save(id, "Box", 1, "page");
        Dances.Save(id, "late", 1, "page");
        Dances.Remove(id);
        Dances.Remove(id);
        Dances.EmptyBin();

        Assert.Equal([$"{id}: Box", $"{id}: Box", $"{id}: "], told);
    }

    [Fact]
    public async Task Fifty_pages_that_save_one_dance_lose_no_text()
    {
        string id = Dances.Add("start", "page").Id;
        await Parallel.ForAsync(0, 50, new ParallelOptions { MaxDegreeOfParallelism = 50 }, (page, _) =>
        {
            StoredDance seen = Dances.Get(id)!;
            SaveOutcome outcome = Dances.Save(id, $"{seen.Text}\n{page}", seen.Revision, $"page {page}");
            while (outcome is SaveOutcome.Changed changed)
            {
                outcome = Dances.Save(id, $"{changed.Text}\n{page}", changed.Revision, $"page {page}");
            }

            return ValueTask.CompletedTask;
        });

        string[] lines = Dances.Get(id)!.Text.Split('\n');
        Assert.Equal(51, lines.Length);
        Assert.Equal(Enumerable.Range(0, 50), lines.Skip(1).Select(l => int.Parse(l, System.Globalization.CultureInfo.InvariantCulture)).Order());
        Assert.Equal(51, Dances.Get(id)!.Revision);
        Assert.Equal(50, Dances.Versions(id).Count);
    }
}
