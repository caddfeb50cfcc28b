using System.Text;
using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using Scuff.Repertoire.Backups;
using Scuff.Repertoire.Files;
using Scuff.Repertoire.Storage;

namespace Scuff.Repertoire;

/// <summary>
/// The people who come to her classes, if she keeps any. Nothing in the program needs one. They stay on this machine, can be written into a file of
/// her own, and are erased for good.
/// </summary>
public sealed class ClubPeople
{
    private const string JsonEnding = ".json";
    private const string TableEnding = ".csv";

    private static readonly string[] Columns = ["name", "level", "classes", "needs", "notes"];

    private readonly Club _club;

    internal ClubPeople(Club club) => _club = club;

    /// <summary>All people, by name.</summary>
    /// <exception cref="ClubTrouble">The club could not be read.</exception>
    public ValueList<ClubPerson> List() => _club.Store.Ask(connection =>
    {
        ILookup<long, string> classes = Rows.Ask(
            connection,
            "SELECT l.PersonKey, l.ClassKey FROM PersonClasses l ORDER BY l.PersonKey, l.ClassKey",
            r => (Person: r.GetInt64(0), Class: Ids.Class(r.GetInt64(1)))).ToLookup(l => l.Person, l => l.Class);
        return Rows.Ask(
            connection,
            "SELECT p.Key, p.Name, p.Level, p.Needs, p.Notes FROM People p",
            r => new ClubPerson
            {
                Id = Ids.Person(r.GetInt64(0)),
                Name = r.GetString(1),
                Level = r.GetString(2),
                ClassIds = classes[r.GetInt64(0)].ToValueList(),
                Needs = r.GetString(3),
                Notes = r.GetString(4),
            });
    }).OrderBy(p => Folding.FoldLine(p.Name), StringComparer.Ordinal).ThenBy(p => p.Id, StringComparer.Ordinal).ToValueList();

    /// <summary>Keeps a person: a new one when the id is empty, else in the place of what was kept. Classes that are no more are left out.</summary>
    /// <returns>The person as kept, with an id.</returns>
    /// <exception cref="ClubTrouble">The person cannot be kept, is not there any more, or could not be written.</exception>
    public ClubPerson Save(ClubPerson person)
    {
        ClubPerson tidy = BookRules.Tidy(person);
        tidy = _club.Store.Write(db =>
        {
            LeaveNoTraces(db);
            PersonEntry entry = tidy.Id.Length == 0
                ? db.People.Add(new PersonEntry()).Entity
                : (Ids.PersonKey(tidy.Id) is long key ? db.People.Find(key) : null)
                    ?? throw new ClubTrouble(ClubTroubleKind.NotFound, "This person is not kept any more.");
            entry.Name = tidy.Name;
            entry.Level = tidy.Level;
            entry.Needs = tidy.Needs;
            entry.Notes = tidy.Notes;
            db.SaveChanges();
            db.PersonClasses.Where(l => l.PersonKey == entry.Key).ExecuteDelete();
            long[] wanted = [.. tidy.ClassIds.Select(Ids.ClassKey).OfType<long>().Distinct()];
            long[] there = [.. db.Classes.Where(c => wanted.Contains(c.Key)).Select(c => c.Key).OrderBy(k => k)];
            db.PersonClasses.AddRange(there.Select(k => new PersonClassEntry { PersonKey = entry.Key, ClassKey = k }));
            return tidy with { Id = Ids.Person(entry.Key), ClassIds = there.Select(Ids.Class).ToValueList() };
        });
        _club.Tell(new ClubChange { People = true });
        return tidy;
    }

    /// <summary>Writes all people into a file, whole or not at all: a table for a name that ends in <c>.csv</c>, else JSON.</summary>
    /// <param name="file">Full path of the file. One that is there is replaced.</param>
    /// <returns>How many people are in it.</returns>
    /// <exception cref="ClubTrouble">The name ends in neither <c>.csv</c> nor <c>.json</c>, or it could not be written.</exception>
    public int Export(string file)
    {
        string ending = Path.GetExtension(file).ToLowerInvariant();
        if (ending is not (JsonEnding or TableEnding))
        {
            throw BookRules.Cannot($"People are written as a table into a file that ends in {TableEnding}, or into one that ends in {JsonEnding}; {file} ends in neither.");
        }

        ValueList<ClubPerson> people = List();
        Dictionary<string, string> titles = _club.Book.Classes(includeEnded: true).ToDictionary(c => c.Id, c => c.Title);
        try
        {
            WholeFile.Write(file, stream => (ending == JsonEnding ? (Action<Stream, ValueList<ClubPerson>, Dictionary<string, string>>)WriteJson : WriteTable)(
                stream, people, titles));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new ClubTrouble(ClubWords.KindOf(e), FileWords.NotWritten(file, e), e);
        }

        return people.Count;
    }

    /// <summary>
    /// Erases one person for good: the bytes are gone from the files of the club when it returns, and with them all people from the backups that
    /// Scuff made by itself in <c>kept/</c>.
    /// </summary>
    /// <param name="id">The person. Someone who is not there any more is no trouble: what may be left of people erased before is cleaned away again.</param>
    /// <exception cref="ClubTrouble">It could not be done, or not wholly; the sentence says which.</exception>
    public ErasedPeople Erase(string id)
        => Erased(Ids.PersonKey(id) is long key ? db => db.People.Where(p => p.Key == key).ExecuteDelete() : _ => 0);

    /// <summary>Erases all people for good, as <see cref="Erase"/> does one.</summary>
    /// <exception cref="ClubTrouble">It could not be done, or not wholly; the sentence says which.</exception>
    public ErasedPeople EraseAll() => Erased(db => db.People.ExecuteDelete());

    // SQLite writes zeros over what goes: https://sqlite.org/pragma.html#pragma_secure_delete
    private static void LeaveNoTraces(ClubDatabase db) => db.Database.ExecuteSql($"PRAGMA secure_delete = ON");

    private static void WriteTable(Stream stream, ValueList<ClubPerson> people, Dictionary<string, string> titles)
    {
        // with the mark by which spreadsheets know UTF-8; lines and quotation marks as RFC 4180 has them
        using StreamWriter writer = new(stream, new UTF8Encoding(encoderShouldEmitUTF8Identifier: true), leaveOpen: true) { NewLine = "\r\n" };
        writer.WriteLine(string.Join(',', Columns));
        foreach (ClubPerson person in people)
        {
            string[] cells = [person.Name, person.Level, string.Join("; ", person.ClassIds.Select(c => titles[c])), person.Needs, person.Notes];
            writer.WriteLine(string.Join(',', cells.Select(c => $"\"{c.Replace("\"", "\"\"", StringComparison.Ordinal)}\"")));
        }
    }

    private static void WriteJson(Stream stream, ValueList<ClubPerson> people, Dictionary<string, string> titles)
    {
        using Utf8JsonWriter json = new(stream, new JsonWriterOptions { Indented = true, NewLine = "\n" });
        json.WriteStartArray();
        foreach (ClubPerson person in people)
        {
            json.WriteStartObject();
            json.WriteString("name", person.Name);
            json.WriteString("level", person.Level);
            json.WriteStartArray("classes");
            foreach (string held in person.ClassIds)
            {
                json.WriteStringValue(titles[held]);
            }

            json.WriteEndArray();
            json.WriteString("needs", person.Needs);
            json.WriteString("notes", person.Notes);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private ErasedPeople Erased(Func<ClubDatabase, int> erase)
    {
        int count = _club.Store.Write(db =>
        {
            LeaveNoTraces(db);
            return erase(db);
        });
        _club.Tell(new ClubChange { People = true });
        _club.Store.Scrub();
        (ValueList<string> cleaned, ValueList<string> untouched) = KeptPeople.Drop(_club.KeptFolder, _club.Folder);
        return new ErasedPeople(count, cleaned, untouched);
    }
}
