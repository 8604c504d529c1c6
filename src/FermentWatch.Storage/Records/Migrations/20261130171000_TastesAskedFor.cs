using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace FermentWatch.Storage.Records.Migrations
{
    /// <inheritdoc />
    public partial class TastesAskedFor : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<string>(
                name: "TasteAsked",
                table: "round",
                type: "TEXT",
                nullable: false,
                defaultValue: "");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropColumn(
                name: "TasteAsked",
                table: "round");
        }
    }
}
