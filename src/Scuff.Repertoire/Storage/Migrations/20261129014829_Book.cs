using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Scuff.Repertoire.Storage.Migrations
{
    /// <inheritdoc />
    internal sealed partial class Book : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<string>(
                name: "FactsBy",
                table: "Versions",
                type: "TEXT",
                nullable: false,
                defaultValue: "");

            migrationBuilder.AddColumn<string>(
                name: "Fingerprint",
                table: "Versions",
                type: "TEXT",
                nullable: false,
                defaultValue: "");

            migrationBuilder.AddColumn<int>(
                name: "Revision",
                table: "Versions",
                type: "INTEGER",
                nullable: true);

            migrationBuilder.AddColumn<int>(
                name: "Effort",
                table: "Dances",
                type: "INTEGER",
                nullable: true);

            migrationBuilder.AddColumn<int>(
                name: "Rank",
                table: "Dances",
                type: "INTEGER",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "Feet",
                table: "Dances",
                type: "TEXT",
                nullable: false,
                defaultValue: "");

            migrationBuilder.CreateTable(
                name: "Classes",
                columns: table => new
                {
                    Key = table.Column<long>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    Title = table.Column<string>(type: "TEXT", nullable: false),
                    Level = table.Column<string>(type: "TEXT", nullable: false),
                    Weekday = table.Column<int>(type: "INTEGER", nullable: true),
                    Starts = table.Column<int>(type: "INTEGER", nullable: true),
                    Minutes = table.Column<int>(type: "INTEGER", nullable: false),
                    Place = table.Column<string>(type: "TEXT", nullable: false),
                    People = table.Column<int>(type: "INTEGER", nullable: true),
                    Notes = table.Column<string>(type: "TEXT", nullable: false),
                    EndedOn = table.Column<int>(type: "INTEGER", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Classes", x => x.Key);
                });

            migrationBuilder.CreateTable(
                name: "People",
                columns: table => new
                {
                    Key = table.Column<long>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    Name = table.Column<string>(type: "TEXT", nullable: false),
                    Level = table.Column<string>(type: "TEXT", nullable: false),
                    Needs = table.Column<string>(type: "TEXT", nullable: false),
                    Notes = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_People", x => x.Key);
                });

            migrationBuilder.CreateTable(
                name: "Evenings",
                columns: table => new
                {
                    Key = table.Column<long>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    Revision = table.Column<int>(type: "INTEGER", nullable: false),
                    Title = table.Column<string>(type: "TEXT", nullable: false),
                    Date = table.Column<int>(type: "INTEGER", nullable: false),
                    Starts = table.Column<int>(type: "INTEGER", nullable: false),
                    Minutes = table.Column<int>(type: "INTEGER", nullable: false),
                    Place = table.Column<string>(type: "TEXT", nullable: false),
                    ClassKey = table.Column<long>(type: "INTEGER", nullable: true),
                    Plan = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Evenings", x => x.Key);
                    table.ForeignKey(
                        name: "FK_Evenings_Classes_ClassKey",
                        column: x => x.ClassKey,
                        principalTable: "Classes",
                        principalColumn: "Key",
                        onDelete: ReferentialAction.SetNull);
                });

            migrationBuilder.CreateTable(
                name: "Marks",
                columns: table => new
                {
                    ClassKey = table.Column<long>(type: "INTEGER", nullable: false),
                    DanceKey = table.Column<long>(type: "INTEGER", nullable: false),
                    Date = table.Column<int>(type: "INTEGER", nullable: false),
                    Knowing = table.Column<int>(type: "INTEGER", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Marks", x => new { x.ClassKey, x.DanceKey, x.Date });
                    table.ForeignKey(
                        name: "FK_Marks_Classes_ClassKey",
                        column: x => x.ClassKey,
                        principalTable: "Classes",
                        principalColumn: "Key",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "FK_Marks_Dances_DanceKey",
                        column: x => x.DanceKey,
                        principalTable: "Dances",
                        principalColumn: "Key",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "Sessions",
                columns: table => new
                {
                    Key = table.Column<long>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    ClassKey = table.Column<long>(type: "INTEGER", nullable: false),
                    Date = table.Column<int>(type: "INTEGER", nullable: false),
                    Starts = table.Column<int>(type: "INTEGER", nullable: true),
                    Minutes = table.Column<int>(type: "INTEGER", nullable: true),
                    IsHeld = table.Column<bool>(type: "INTEGER", nullable: false),
                    People = table.Column<int>(type: "INTEGER", nullable: true),
                    HowItWent = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Sessions", x => x.Key);
                    table.ForeignKey(
                        name: "FK_Sessions_Classes_ClassKey",
                        column: x => x.ClassKey,
                        principalTable: "Classes",
                        principalColumn: "Key",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "PersonClasses",
                columns: table => new
                {
                    PersonKey = table.Column<long>(type: "INTEGER", nullable: false),
                    ClassKey = table.Column<long>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_PersonClasses", x => new { x.PersonKey, x.ClassKey });
                    table.ForeignKey(
                        name: "FK_PersonClasses_Classes_ClassKey",
                        column: x => x.ClassKey,
                        principalTable: "Classes",
                        principalColumn: "Key",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "FK_PersonClasses_People_PersonKey",
                        column: x => x.PersonKey,
                        principalTable: "People",
                        principalColumn: "Key",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "SessionItems",
                columns: table => new
                {
                    SessionKey = table.Column<long>(type: "INTEGER", nullable: false),
                    Place = table.Column<int>(type: "INTEGER", nullable: false),
                    Role = table.Column<int>(type: "INTEGER", nullable: false),
                    DanceKey = table.Column<long>(type: "INTEGER", nullable: true),
                    Title = table.Column<string>(type: "TEXT", nullable: false),
                    Revision = table.Column<int>(type: "INTEGER", nullable: true),
                    Minutes = table.Column<int>(type: "INTEGER", nullable: true),
                    Note = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_SessionItems", x => new { x.SessionKey, x.Place });
                    table.ForeignKey(
                        name: "FK_SessionItems_Dances_DanceKey",
                        column: x => x.DanceKey,
                        principalTable: "Dances",
                        principalColumn: "Key",
                        onDelete: ReferentialAction.SetNull);
                    table.ForeignKey(
                        name: "FK_SessionItems_Sessions_SessionKey",
                        column: x => x.SessionKey,
                        principalTable: "Sessions",
                        principalColumn: "Key",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateIndex(
                name: "IX_Versions_DanceKey_Revision",
                table: "Versions",
                columns: new[] { "DanceKey", "Revision" });

            migrationBuilder.CreateIndex(
                name: "IX_Evenings_ClassKey",
                table: "Evenings",
                column: "ClassKey");

            migrationBuilder.CreateIndex(
                name: "IX_Evenings_Date",
                table: "Evenings",
                column: "Date");

            migrationBuilder.CreateIndex(
                name: "IX_Marks_DanceKey",
                table: "Marks",
                column: "DanceKey");

            migrationBuilder.CreateIndex(
                name: "IX_PersonClasses_ClassKey",
                table: "PersonClasses",
                column: "ClassKey");

            migrationBuilder.CreateIndex(
                name: "IX_SessionItems_DanceKey_Revision",
                table: "SessionItems",
                columns: new[] { "DanceKey", "Revision" });

            migrationBuilder.CreateIndex(
                name: "IX_SessionItems_SessionKey_DanceKey_Role_Revision",
                table: "SessionItems",
                columns: new[] { "SessionKey", "DanceKey", "Role", "Revision" });

            migrationBuilder.CreateIndex(
                name: "IX_Sessions_ClassKey_Date",
                table: "Sessions",
                columns: new[] { "ClassKey", "Date" });

            migrationBuilder.CreateIndex(
                name: "IX_Sessions_Date",
                table: "Sessions",
                column: "Date");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "Evenings");

            migrationBuilder.DropTable(
                name: "Marks");

            migrationBuilder.DropTable(
                name: "PersonClasses");

            migrationBuilder.DropTable(
                name: "SessionItems");

            migrationBuilder.DropTable(
                name: "People");

            migrationBuilder.DropTable(
                name: "Sessions");

            migrationBuilder.DropTable(
                name: "Classes");

            migrationBuilder.DropIndex(
                name: "IX_Versions_DanceKey_Revision",
                table: "Versions");

            migrationBuilder.DropColumn(
                name: "FactsBy",
                table: "Versions");

            migrationBuilder.DropColumn(
                name: "Fingerprint",
                table: "Versions");

            migrationBuilder.DropColumn(
                name: "Revision",
                table: "Versions");

            migrationBuilder.DropColumn(
                name: "Effort",
                table: "Dances");

            migrationBuilder.DropColumn(
                name: "Feet",
                table: "Dances");

            migrationBuilder.DropColumn(
                name: "Rank",
                table: "Dances");
        }
    }
}
