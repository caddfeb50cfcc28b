using System.Security.Cryptography;
using System.Text;
using Microsoft.EntityFrameworkCore;

namespace Scuff.Repertoire.Storage;

/// <summary>
/// Writes texts of dances, with everything that hangs on a text: facts, versions, index. Used within <see cref="ClubStore.Write"/>.
/// </summary>
/// <param name="db">The database.</param>
/// <param name="now">The time.</param>
internal sealed class DanceWriting(ClubDatabase db, DateTimeOffset now)
{
    /// <summary>A text as the club keeps it: line feeds end its lines, and no zero character cuts it short.</summary>
    public static string Tidy(string text)
        => text.Replace("\r\n", "\n", StringComparison.Ordinal).Replace('\r', '\n').Replace('\0', '\uFFFD');

    /// <summary>The digest of a text without what does not make it another: white space and case.</summary>
    public static string DigestOf(string text)
    {
        string bare = string.Join(' ', text.ToLowerInvariant().Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(bare)));
    }

    /// <summary>Adds a dance.</summary>
    public DanceEntry Add(ReadDance dance, string hand)
    {
        DanceEntry entry = new() { AddedAt = now, SavedAt = now, Hand = hand, Body = new DanceText { Text = dance.Text } };
        SetFacts(entry, dance);
        db.Dances.Add(entry);
        db.SaveChanges();
        WordIndex.Put(db, entry, dance.Text);
        return entry;
    }

    /// <summary>
    /// Puts a text in the place of the present one, which becomes a version where that is due. The same text changes nothing but the facts.
    /// </summary>
    /// <returns>Whether the text changed.</returns>
    public bool Replace(DanceEntry entry, ReadDance dance, string hand)
    {
        bool isOther = entry.Body.Text != dance.Text;
        if (isOther)
        {
            if (entry.Hand != hand || !Hands.IsPage(hand) || now - entry.SavedAt > ClubDances.EditSession)
            {
                KeepPresent(entry);
            }

            entry.Body.Text = dance.Text;
            entry.Revision++;
            entry.SavedAt = now;
            entry.Hand = hand;
        }

        SetFacts(entry, dance);
        db.SaveChanges();
        WordIndex.Put(db, entry, dance.Text);
        return isOther;
    }

    /// <summary>Keeps the present text as a version under a name.</summary>
    public VersionEntry Keep(DanceEntry entry, string name)
    {
        VersionEntry version = new()
        {
            DanceKey = entry.Key,
            Number = ++entry.LastVersion,
            Name = name,
            SavedAt = entry.SavedAt,
            Hand = entry.Hand,
            Text = entry.Body.Text,
            Revision = entry.Revision,
            Fingerprint = entry.Fingerprint,
            FactsBy = entry.FactsBy,
        };
        db.Versions.Add(version);
        return version;
    }

    /// <summary>Sets tags.</summary>
    public void SetTags(DanceEntry entry, ValueList<string> tags)
    {
        entry.Tags = TagLine.Write(tags);
        entry.FoldedTags = TagLine.Fold(entry.Tags);
        db.SaveChanges();
        WordIndex.Put(db, entry, entry.Body.Text);
    }

    // Without asking; not when the last version is this very text already.
    private void KeepPresent(DanceEntry entry)
    {
        VersionEntry? last = db.Versions.AsNoTracking().Where(v => v.DanceKey == entry.Key).OrderByDescending(v => v.Number).FirstOrDefault();
        if (last?.Text == entry.Body.Text)
        {
            return;
        }

        Keep(entry, "");
        // what a session says was taught stays as long as it says so
        List<VersionEntry> unnamed = db.Versions
            .Where(v => v.DanceKey == entry.Key && v.Name == "")
            .Where(v => !db.SessionItems.Any(i => i.DanceKey == v.DanceKey && i.Revision == v.Revision && i.Revision != null))
            .Select(v => new VersionEntry { Key = v.Key, SavedAt = v.SavedAt }).AsNoTracking().ToList();
        long[] spent = [.. Thinning.Spent(unnamed, v => v.SavedAt, now).Select(v => v.Key)];
        db.Versions.Where(v => spent.Contains(v.Key)).ExecuteDelete();
    }

    private static void SetFacts(DanceEntry entry, ReadDance dance)
    {
        DanceFacts facts = dance.Facts;
        entry.Title = facts.Title;
        entry.FoldedTitle = Folding.FoldLine(facts.Title);
        entry.Choreographer = facts.Choreographer;
        entry.FoldedChoreographer = Folding.FoldLine(facts.Choreographer);
        entry.Level = facts.Level;
        entry.Counts = facts.Counts;
        entry.Walls = facts.Walls;
        entry.Rhythm = facts.Rhythm;
        entry.SlowestTempo = facts.SlowestTempo;
        entry.FastestTempo = facts.FastestTempo;
        entry.Songs = string.Join('\n', facts.Songs.Select(s => s.ReplaceLineEndings(" ")));
        entry.Errors = facts.Errors;
        entry.Questions = facts.Questions;
        entry.Warnings = facts.Warnings;
        entry.Fingerprint = facts.Fingerprint;
        entry.Effort = facts.Effort;
        entry.Rank = facts.Rank;
        entry.Feet = facts.Feet;
        entry.FactsBy = dance.FactsBy;
        entry.TextDigest = DigestOf(dance.Text);
    }
}
