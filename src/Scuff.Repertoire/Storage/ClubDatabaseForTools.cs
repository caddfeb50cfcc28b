using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Design;

namespace Scuff.Repertoire.Storage;

/// <summary>
/// What <c>dotnet ef migrations add Name --project src/Scuff.Repertoire --output-dir Storage/Migrations</c> asks for the tables. The program never
/// uses it.
/// </summary>
internal sealed class ClubDatabaseForTools : IDesignTimeDbContextFactory<ClubDatabase>
{
    public ClubDatabase CreateDbContext(string[] args)
        => new(new DbContextOptionsBuilder<ClubDatabase>().UseSqlite("Data Source=:memory:").Options);
}
