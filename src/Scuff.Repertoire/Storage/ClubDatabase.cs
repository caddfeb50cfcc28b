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

    // SQLite has no type for instants; whole milliseconds since 1970 sort and compare.
    protected override void ConfigureConventions(ModelConfigurationBuilder configurationBuilder)
        => configurationBuilder.Properties<DateTimeOffset>().HaveConversion<Instant>();

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
    }

    private static void OwnBody<TRow, TBody>(ReferenceReferenceBuilder<TRow, TBody> relation)
        where TRow : class
        where TBody : class
        => relation.IsRequired().OnDelete(DeleteBehavior.Cascade);

    private sealed class Instant() : ValueConverter<DateTimeOffset, long>(
        time => time.ToUnixTimeMilliseconds(),
        milliseconds => DateTimeOffset.FromUnixTimeMilliseconds(milliseconds));
}
