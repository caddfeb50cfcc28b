using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Microsoft.EntityFrameworkCore.Storage.ValueConversion;

namespace Scuff.Repertoire.Storage;

/// <summary>The tables of a club. One is made for each piece of work; writing goes through <c>ClubStore</c>.</summary>
internal sealed class ClubDatabase(DbContextOptions<ClubDatabase> options) : DbContext(options)
{
    public DbSet<DanceEntry> Dances => Set<DanceEntry>();

    public DbSet<DanceText> DanceTexts => Set<DanceText>();

    public DbSet<VersionEntry> Versions => Set<VersionEntry>();

    public DbSet<TrackEntry> Tracks => Set<TrackEntry>();

    public DbSet<TrackContent> TrackContents => Set<TrackContent>();

    public DbSet<SettingEntry> Settings => Set<SettingEntry>();

    public DbSet<ClassEntry> Classes => Set<ClassEntry>();

    public DbSet<SessionEntry> Sessions => Set<SessionEntry>();

    public DbSet<SessionItemEntry> SessionItems => Set<SessionItemEntry>();

    public DbSet<MarkEntry> Marks => Set<MarkEntry>();

    public DbSet<EveningEntry> Evenings => Set<EveningEntry>();

    public DbSet<PersonEntry> People => Set<PersonEntry>();

    public DbSet<PersonClassEntry> PersonClasses => Set<PersonClassEntry>();

    // SQLite has no types for these; whole milliseconds since 1970, days since the year 1 and minutes since midnight sort and compare.
    protected override void ConfigureConventions(ModelConfigurationBuilder configurationBuilder)
    {
        configurationBuilder.Properties<DateTimeOffset>().HaveConversion<Instant>();
        configurationBuilder.Properties<DateOnly>().HaveConversion<Day>();
        configurationBuilder.Properties<TimeOnly>().HaveConversion<Minute>();
    }

    protected override void OnModelCreating(ModelBuilder modelBuilder)
    {
        modelBuilder.Entity<DanceEntry>(dance =>
        {
            dance.HasKey(d => d.Key);
            dance.HasIndex(d => d.FoldedTitle);
            dance.HasIndex(d => d.TextDigest);
            dance.HasIndex(d => d.Fingerprint);
            dance.HasIndex(d => d.FileName).IsUnique();
            OwnBody(dance.HasOne(d => d.Body).WithOne().HasForeignKey<DanceText>(t => t.Key));
        });
        modelBuilder.Entity<DanceText>(text =>
        {
            text.HasKey(t => t.Key);
            text.Property(t => t.Key).ValueGeneratedNever();
        });
        modelBuilder.Entity<VersionEntry>(version =>
        {
            version.HasKey(v => v.Key);
            version.HasIndex(v => new { v.DanceKey, v.Number }).IsUnique();
            version.HasIndex(v => new { v.DanceKey, v.Revision });
            version.HasOne<DanceEntry>().WithMany().HasForeignKey(v => v.DanceKey).OnDelete(DeleteBehavior.Cascade);
        });
        modelBuilder.Entity<TrackEntry>(track =>
        {
            track.HasKey(t => t.Key);
            track.HasIndex(t => t.Digest).IsUnique();
            track.HasIndex(t => new { t.FoldedTitle, t.FoldedArtist });
            OwnBody(track.HasOne(t => t.Body).WithOne().HasForeignKey<TrackContent>(c => c.Key));
        });
        modelBuilder.Entity<TrackContent>(content =>
        {
            content.HasKey(c => c.Key);
            content.Property(c => c.Key).ValueGeneratedNever();
        });
        modelBuilder.Entity<SettingEntry>().HasKey(s => s.Name);
        CreateBook(modelBuilder);
    }

    private static void CreateBook(ModelBuilder modelBuilder)
    {
        modelBuilder.Entity<ClassEntry>().HasKey(c => c.Key);
        modelBuilder.Entity<SessionEntry>(session =>
        {
            session.HasKey(s => s.Key);
            session.HasIndex(s => new { s.ClassKey, s.Date });
            session.HasIndex(s => s.Date);
            session.HasOne<ClassEntry>().WithMany().HasForeignKey(s => s.ClassKey).OnDelete(DeleteBehavior.Cascade);
        });
        modelBuilder.Entity<SessionItemEntry>(item =>
        {
            item.HasKey(i => new { i.SessionKey, i.Place });
            item.HasIndex(i => new { i.DanceKey, i.Revision });
            // what is asked of all sessions of a class is answered from this alone
            item.HasIndex(i => new { i.SessionKey, i.DanceKey, i.Role, i.Revision });
            item.HasOne<SessionEntry>().WithMany().HasForeignKey(i => i.SessionKey).OnDelete(DeleteBehavior.Cascade);
            item.HasOne<DanceEntry>().WithMany().HasForeignKey(i => i.DanceKey).OnDelete(DeleteBehavior.SetNull);
        });
        modelBuilder.Entity<MarkEntry>(mark =>
        {
            mark.HasKey(m => new { m.ClassKey, m.DanceKey, m.Date });
            mark.HasIndex(m => m.DanceKey);
            mark.HasOne<ClassEntry>().WithMany().HasForeignKey(m => m.ClassKey).OnDelete(DeleteBehavior.Cascade);
            mark.HasOne<DanceEntry>().WithMany().HasForeignKey(m => m.DanceKey).OnDelete(DeleteBehavior.Cascade);
        });
        modelBuilder.Entity<EveningEntry>(evening =>
        {
            evening.HasKey(e => e.Key);
            evening.HasIndex(e => e.Date);
            evening.HasIndex(e => e.ClassKey);
            evening.HasOne<ClassEntry>().WithMany().HasForeignKey(e => e.ClassKey).OnDelete(DeleteBehavior.SetNull);
        });
        modelBuilder.Entity<PersonEntry>().HasKey(p => p.Key);
        modelBuilder.Entity<PersonClassEntry>(link =>
        {
            link.HasKey(l => new { l.PersonKey, l.ClassKey });
            link.HasIndex(l => l.ClassKey);
            link.HasOne<PersonEntry>().WithMany().HasForeignKey(l => l.PersonKey).OnDelete(DeleteBehavior.Cascade);
            link.HasOne<ClassEntry>().WithMany().HasForeignKey(l => l.ClassKey).OnDelete(DeleteBehavior.Cascade);
        });
    }

    private static void OwnBody<TRow, TBody>(ReferenceReferenceBuilder<TRow, TBody> relation)
        where TRow : class
        where TBody : class
        => relation.IsRequired().OnDelete(DeleteBehavior.Cascade);

    private sealed class Instant() : ValueConverter<DateTimeOffset, long>(
        time => time.ToUnixTimeMilliseconds(),
        milliseconds => DateTimeOffset.FromUnixTimeMilliseconds(milliseconds));

    private sealed class Day() : ValueConverter<DateOnly, int>(day => day.DayNumber, number => DateOnly.FromDayNumber(number));

    private sealed class Minute() : ValueConverter<TimeOnly, int>(
        time => (time.Hour * 60) + time.Minute,
        minutes => new TimeOnly(minutes / 60, minutes % 60));
}
