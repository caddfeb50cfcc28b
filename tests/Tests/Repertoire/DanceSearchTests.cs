using CsCheck;
using Scuff.Repertoire;
using Scuff.Repertoire.Storage;

namespace Tests.Repertoire;

public sealed class DanceSearchTests : IDisposable
{
    private readonly ClubHouse _house = new();

    private ClubDances Dances => _house.Club.Dances;

    public void Dispose() => _house.Dispose();

    [Theory]
    [InlineData("harbour", "Harbour Box")]
    [InlineData("harb bo", "Harbour Box")]
    [InlineData("  BOX   harbour ", "Harbour Box")]
    [InlineData("soren", "Søren's Café")]
    [InlineData("søren", "Søren's Café")]
    [InlineData("cafe", "Søren's Café")]
    [InlineData("CAFÉ", "Søren's Café")]
    [InlineData("cafe\u0301", "Søren's Café")]
    [InlineData("strasse", "Straße")]
    [InlineData("kuß", "Straße")]
    [InlineData("demo band", "Harbour Box")]
    [InlineData("out-of-harbour", "Harbour Box")]
    [InlineData("🎵", "🎵 Tune")]
    [InlineData("tune 🎵", "🎵 Tune")]
    [InlineData("½", "Straße")]
    [InlineData("monday", "Straße")]
    [InlineData("mambo", "🎵 Tune")]
    public void A_dance_is_found_by_the_beginnings_of_its_words(string words, string title)
    {
        Dances.Add("Harbour Box\nby: Ann\ntrack: \"Out of Harbour\" by The Demo Band\nstep R", "page");
        Dances.Add("Søren's Café\nby: Bo", "page");
        string street = Dances.Add("Straße\nby: Kuß\npivot ½ left", "page").Id;
        Dances.SetTags(street, ["Monday class"]);
        Dances.Add("🎵 Tune\nmambo step", "page");

        DancePage found = Dances.Search(new DanceQuery { Words = words });

        Assert.Equal([title], found.Rows.Select(r => r.Facts.Title));
        Assert.Equal(1, found.Total);
    }

    [Theory]
    [InlineData("")]
    [InlineData("   ")]
    [InlineData("\"")]
    [InlineData("\"\"")]
    [InlineData("'; DROP TABLE Dances; --")]
    [InlineData("title:box")]
    [InlineData("box*")]
    [InlineData("^box")]
    [InlineData("box AND")]
    [InlineData("NOT box")]
    [InlineData("NEAR(box harbour)")]
    [InlineData("(box")]
    [InlineData("{title text}: box")]
    [InlineData("box + harbour")]
    [InlineData("- box")]
    [InlineData("%")]
    [InlineData("_")]
    [InlineData("\0")]
    [InlineData("bo\0x")]
    [InlineData("\uD800")]
    [InlineData("box \uDC00")]
    [InlineData("👩‍👩‍👧")]
    [InlineData("\u202Exob")]
    [InlineData("\u0301")]
    [InlineData("$match $sign0")]
    public void Nothing_typed_is_a_command(string words)
    {
        Dances.Add("Harbour Box", "page");
        Dances.Add("and not near title match or sign0 drop table dances text xob", "page");

        DancePage found = Dances.Search(new DanceQuery { Words = words });

        Assert.InRange(found.Total, 0, 2);
        Assert.Equal(2, Dances.Search(new DanceQuery()).Total);
    }

    [Fact]
    public void Whatever_is_typed_gets_an_answer()
    {
        Dances.Add("Harbour Box", "page");
        Gen.String.Sample(words => Dances.Search(new DanceQuery { Words = words }).Total is 0 or 1, iter: 2000, threads: 1);
    }

    [Fact]
    public void A_very_long_question_gets_an_answer()
        => Assert.Equal(0, Dances.Search(new DanceQuery { Words = string.Concat(Enumerable.Repeat("word ", 5000)), Tag = new string('x', 100_000) }).Total);

    [Fact]
    public void Words_are_looked_for_in_what_is_there_now()
    {
        string id = Dances.Add("Harbour Box\nmambo", "page").Id;
        Dances.Save(id, "Market Day\nrock", 1, "page");

        Assert.Equal(0, Dances.Search(new DanceQuery { Words = "mambo" }).Total);
        Assert.Equal(0, Dances.Search(new DanceQuery { Words = "harbour" }).Total);
        Assert.Equal(1, Dances.Search(new DanceQuery { Words = "market rock" }).Total);
    }

    [Fact]
    public void The_title_weighs_more_than_the_text()
    {
        Dances.Add("A Box\n" + string.Concat(Enumerable.Repeat("lantern ", 3)), "page");
        Dances.Add("Tin Lantern\nstep", "page");

        Assert.Equal(["Tin Lantern", "A Box"], Dances.Search(new DanceQuery { Words = "lantern" }).Rows.Select(r => r.Facts.Title));
        Assert.Equal(["A Box", "Tin Lantern"], Dances.Search(new DanceQuery { Words = "lantern", Order = DanceOrder.Title }).Rows.Select(r => r.Facts.Title));
    }

    [Fact]
    public void Conditions_join()
    {
        Dances.Add("A\nlevel: beginner\nwalls: 4", "page");
        Dances.Add("B\nlevel: beginner\nwalls: 2\n!", "page");
        string c = Dances.Add("C\nlevel: improver\nwalls: 2\n!", "page").Id;
        Dances.SetTags(c, ["easy"]);

        Assert.Equal("AB", Titles(new DanceQuery { Level = "beginner" }));
        Assert.Equal("BC", Titles(new DanceQuery { Walls = 2 }));
        Assert.Equal("BC", Titles(new DanceQuery { OnlyWithComplaints = true }));
        Assert.Equal("C", Titles(new DanceQuery { OnlyWithComplaints = true, Tag = "easy" }));
        Assert.Equal("", Titles(new DanceQuery { Walls = 4, Level = "improver" }));
        Assert.Equal("B", Titles(new DanceQuery { Words = "b", Level = "beginner", Walls = 2 }));
        Assert.Equal(["beginner", "improver"], Dances.Levels());
    }

    [Theory]
    [InlineData(DanceOrder.BestMatch, "ÄBCZ")]
    [InlineData(DanceOrder.Title, "ÄBCZ")]
    [InlineData(DanceOrder.LastSaved, "CÄBZ")]
    [InlineData(DanceOrder.LastAdded, "BÄCZ")]
    [InlineData(DanceOrder.Choreographer, "ÄCZB")]
    [InlineData(DanceOrder.Counts, "BÄZC")]
    public void The_order_is_as_asked(DanceOrder order, string titles)
    {
        Dances.Add("Z\nby: Cleo\ncounts: 64", "page");
        _house.Clock.GoOn(TimeSpan.FromMinutes(1));
        string c = Dances.Add("C\nby: Bo", "page").Id;
        _house.Clock.GoOn(TimeSpan.FromMinutes(1));
        string a = Dances.Add("Ä\nby: Anna\ncounts: 48", "page").Id;
        _house.Clock.GoOn(TimeSpan.FromMinutes(1));
        Dances.Add("B\ncounts: 32", "page");
        _house.Clock.GoOn(TimeSpan.FromMinutes(1));
        Dances.Save(a, "Ä\nby: Anna\ncounts: 48\nstep", 1, "page");
        _house.Clock.GoOn(TimeSpan.FromMinutes(1));
        Dances.Save(c, "C\nby: Bo\nstep", 1, "page");

        Assert.Equal(titles, Titles(new DanceQuery { Order = order }));
    }

    [Fact]
    public void Pages_follow_one_another_and_know_the_whole()
    {
        for (int i = 0; i < 7; i++)
        {
            Dances.Add($"Dance {i}", "page");
        }

        DancePage middle = Dances.Search(new DanceQuery { Words = "dance", Skip = 3, Take = 2 });

        Assert.Equal(["Dance 3", "Dance 4"], middle.Rows.Select(r => r.Facts.Title));
        Assert.Equal(7, middle.Total);
        Assert.Empty(Dances.Search(new DanceQuery { Skip = 99 }).Rows);
        Assert.Empty(Dances.Search(new DanceQuery { Skip = -1, Take = -1 }).Rows);
    }

    [Fact]
    public void Ten_thousand_dances_are_searched_as_by_reading_every_one()
    {
        string[] words = ["rock", "rope", "rose", "Ärmel", "armada", "box", "boxes", "step", "Søm", "someone", "lantern", "late", "été", "eternal"];
        Random dice = new(7);
        List<ReadDance> texts = [.. Enumerable.Range(0, 10_000).Select(i =>
            ReadDance.Of($"Dance {i} {Pick()}\nby: {Pick()}\nlevel: {(i % 3 == 0 ? "beginner" : "improver")}\n{Pick()} {Pick()} {Pick()}", new PlainReader()))];
        Assert.Equal(10_000, Dances.Import(texts, SameTitle.AddBeside).Added.Count);

        List<(string[] Words, bool IsBeginner)> read = texts.ConvertAll(t => (Folding.Fold(t.Text).Split(' ', '\n', ':'), t.Facts.Level == "beginner"));
        foreach (string asked in (string[])["ro", "rock", "box", "boxe", "arm", "som ete", "la ro bo", "9", "step 77", "nothing", "lan LAT ÉT"])
        {
            string[] parts = [.. asked.Split(' ').Select(Folding.Fold)];
            List<(string[] Words, bool IsBeginner)> expected = read.FindAll(r =>
                Array.TrueForAll(parts, p => Array.Exists(r.Words, w => w.StartsWith(p, StringComparison.Ordinal))));

            Assert.Equal((asked, expected.Count), (asked, Dances.Search(new DanceQuery { Words = asked }).Total));
            Assert.Equal((asked, expected.Count(e => e.IsBeginner)), (asked, Dances.Search(new DanceQuery { Words = asked, Level = "beginner" }).Total));
        }

        string Pick() => words[dice.Next(words.Length)];
    }

    [Fact]
    public void The_index_is_made_again_when_its_form_changes()
    {
        Dances.Add("Harbour Box", "page");
        _house.Club.Store.Write(db =>
        {
            db.Settings.Find(WordIndex.FormSetting)!.Value = "0";
            WordIndex.Drop(db, db.Dances.Single());
            return true;
        });
        Assert.Equal(0, Dances.Search(new DanceQuery { Words = "harbour" }).Total);

        _house.Reopen();

        Assert.Equal(1, Dances.Search(new DanceQuery { Words = "harbour" }).Total);
    }

    private string Titles(DanceQuery query) => string.Concat(Dances.Search(query).Rows.Select(r => r.Facts.Title));
}
