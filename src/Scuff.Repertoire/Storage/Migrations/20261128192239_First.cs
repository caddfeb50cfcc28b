using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Scuff.Repertoire.Storage.Migrations
{
    /// <inheritdoc />
    internal sealed partial class First : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "Dances",
                columns: table => new
                {
                    Key = table.Column<long>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    Revision = table.Column<int>(type: "INTEGER", nullable: false),
                    Title = table.Column<string>(type: "TEXT", nullable: false),
                    FoldedTitle = table.Column<string>(type: "TEXT", nullable: false),
                    Choreographer = table.Column<string>(type: "TEXT", nullable: false),
                    FoldedChoreographer = table.Column<string>(type: "TEXT", nullable: false),
                    Level = table.Column<string>(type: "TEXT", nullable: false),
                    Counts = table.Column<int>(type: "INTEGER", nullable: true),
                    Walls = table.Column<int>(type: "INTEGER", nullable: true),
                    Rhythm = table.Column<string>(type: "TEXT", nullable: false),
                    SlowestTempo = table.Column<double>(type: "REAL", nullable: true),
                    FastestTempo = table.Column<double>(type: "REAL", nullable: true),
                    Songs = table.Column<string>(type: "TEXT", nullable: false),
                    Errors = table.Column<int>(type: "INTEGER", nullable: false),
                    Questions = table.Column<int>(type: "INTEGER", nullable: false),
                    Warnings = table.Column<int>(type: "INTEGER", nullable: false),
                    Fingerprint = table.Column<string>(type: "TEXT", nullable: false),
                    TextDigest = table.Column<string>(type: "TEXT", nullable: false),
                    FactsBy = table.Column<string>(type: "TEXT", nullable: false),
                    Tags = table.Column<string>(type: "TEXT", nullable: false),
                    FoldedTags = table.Column<string>(type: "TEXT", nullable: false),
                    AddedAt = table.Column<long>(type: "INTEGER", nullable: false),
                    SavedAt = table.Column<long>(type: "INTEGER", nullable: false),
                    RemovedAt = table.Column<long>(type: "INTEGER", nullable: true),
                    Hand = table.Column<string>(type: "TEXT", nullable: false),
                    LastVersion = table.Column<int>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Dances", x => x.Key);
                });

            migrationBuilder.CreateTable(
                name: "Settings",
                columns: table => new
                {
                    Name = table.Column<string>(type: "TEXT", nullable: false),
                    Value = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Settings", x => x.Name);
                });

            migrationBuilder.CreateTable(
                name: "Tracks",
                columns: table => new
                {
                    Key = table.Column<long>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    Title = table.Column<string>(type: "TEXT", nullable: false),
                    FoldedTitle = table.Column<string>(type: "TEXT", nullable: false),
                    Artist = table.Column<string>(type: "TEXT", nullable: false),
                    FoldedArtist = table.Column<string>(type: "TEXT", nullable: false),
                    Seconds = table.Column<double>(type: "REAL", nullable: true),
                    Tempo = table.Column<double>(type: "REAL", nullable: true),
                    FileName = table.Column<string>(type: "TEXT", nullable: false),
                    Digest = table.Column<string>(type: "TEXT", nullable: true),
                    Ending = table.Column<string>(type: "TEXT", nullable: false),
                    Bytes = table.Column<long>(type: "INTEGER", nullable: false),
                    HeardBy = table.Column<string>(type: "TEXT", nullable: false),
                    CorrectionsRevision = table.Column<int>(type: "INTEGER", nullable: false),
                    Tags = table.Column<string>(type: "TEXT", nullable: false),
                    FoldedTags = table.Column<string>(type: "TEXT", nullable: false),
                    AddedAt = table.Column<long>(type: "INTEGER", nullable: false),
                    RemovedAt = table.Column<long>(type: "INTEGER", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Tracks", x => x.Key);
                });

            migrationBuilder.CreateTable(
                name: "DanceTexts",
                columns: table => new
                {
                    Key = table.Column<long>(type: "INTEGER", nullable: false),
                    Text = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_DanceTexts", x => x.Key);
                    table.ForeignKey(
                        name: "FK_DanceTexts_Dances_Key",
                        column: x => x.Key,
                        principalTable: "Dances",
                        principalColumn: "Key",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "Versions",
                columns: table => new
                {
                    Key = table.Column<long>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    DanceKey = table.Column<long>(type: "INTEGER", nullable: false),
                    Number = table.Column<int>(type: "INTEGER", nullable: false),
                    Name = table.Column<string>(type: "TEXT", nullable: false),
                    SavedAt = table.Column<long>(type: "INTEGER", nullable: false),
                    Hand = table.Column<string>(type: "TEXT", nullable: false),
                    Text = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Versions", x => x.Key);
                    table.ForeignKey(
                        name: "FK_Versions_Dances_DanceKey",
                        column: x => x.DanceKey,
                        principalTable: "Dances",
                        principalColumn: "Key",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "TrackContents",
                columns: table => new
                {
                    Key = table.Column<long>(type: "INTEGER", nullable: false),
                    Map = table.Column<byte[]>(type: "BLOB", nullable: true),
                    Corrections = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_TrackContents", x => x.Key);
                    table.ForeignKey(
                        name: "FK_TrackContents_Tracks_Key",
                        column: x => x.Key,
                        principalTable: "Tracks",
                        principalColumn: "Key",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateIndex(
                name: "IX_Dances_Fingerprint",
                table: "Dances",
                column: "Fingerprint");

            migrationBuilder.CreateIndex(
                name: "IX_Dances_FoldedTitle",
                table: "Dances",
                column: "FoldedTitle");

            migrationBuilder.CreateIndex(
                name: "IX_Dances_TextDigest",
                table: "Dances",
                column: "TextDigest");

            migrationBuilder.CreateIndex(
                name: "IX_Tracks_Digest",
                table: "Tracks",
                column: "Digest",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_Tracks_FoldedTitle_FoldedArtist",
                table: "Tracks",
                columns: new[] { "FoldedTitle", "FoldedArtist" });

            migrationBuilder.CreateIndex(
                name: "IX_Versions_DanceKey_Number",
                table: "Versions",
                columns: new[] { "DanceKey", "Number" },
                unique: true);

            // Added by hand: what says that the file is a club, and the indexes of words, which WordIndex fills.
            migrationBuilder.Sql("PRAGMA application_id = 1399026022;");
            migrationBuilder.Sql(
                """
                CREATE VIRTUAL TABLE DanceWords USING fts5(title, choreographer, songs, tags, text, content='', contentless_delete=1, prefix='1 2 3');
                """);
            migrationBuilder.Sql(
                """
                CREATE VIRTUAL TABLE TrackWords USING fts5(title, artist, file, tags, content='', contentless_delete=1, prefix='1 2 3');
                """);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "DanceTexts");

            migrationBuilder.DropTable(
                name: "Settings");

            migrationBuilder.DropTable(
                name: "TrackContents");

            migrationBuilder.DropTable(
                name: "Versions");

            migrationBuilder.DropTable(
                name: "Tracks");

            migrationBuilder.DropTable(
                name: "Dances");
        }
    }
}
