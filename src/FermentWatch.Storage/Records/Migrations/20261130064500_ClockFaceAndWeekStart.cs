using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace FermentWatch.Storage.Records.Migrations
{
    /// <inheritdoc />
    public partial class ClockFaceAndWeekStart : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<string>(
                name: "ClockFace",
                table: "household",
                type: "TEXT",
                nullable: false,
                defaultValue: "TwentyFourHours");

            migrationBuilder.AddColumn<string>(
                name: "WeekStart",
                table: "household",
                type: "TEXT",
                nullable: false,
                defaultValue: "Monday");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropColumn(
                name: "ClockFace",
                table: "household");

            migrationBuilder.DropColumn(
                name: "WeekStart",
                table: "household");
        }
    }
}
