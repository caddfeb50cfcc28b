using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Scuff.Repertoire.Storage.Migrations
{
    /// <inheritdoc />
    internal sealed partial class LinkedFolder : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<string>(
                name: "FileDigest",
                table: "Dances",
                type: "TEXT",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "FileName",
                table: "Dances",
                type: "TEXT",
                nullable: true);

            migrationBuilder.AddColumn<int>(
                name: "FileRevision",
                table: "Dances",
                type: "INTEGER",
                nullable: false,
                defaultValue: 0);

            migrationBuilder.CreateIndex(
                name: "IX_Dances_FileName",
                table: "Dances",
                column: "FileName",
                unique: true);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropIndex(
                name: "IX_Dances_FileName",
                table: "Dances");

            migrationBuilder.DropColumn(
                name: "FileDigest",
                table: "Dances");

            migrationBuilder.DropColumn(
                name: "FileName",
                table: "Dances");

            migrationBuilder.DropColumn(
                name: "FileRevision",
                table: "Dances");
        }
    }
}
