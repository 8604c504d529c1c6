using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace FermentWatch.Storage.Records.Migrations
{
    /// <inheritdoc />
    public partial class PeopleByAccount : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<Guid>(
                name: "ById",
                table: "observation",
                type: "TEXT",
                nullable: true);
            migrationBuilder.AddColumn<Guid>(
                name: "ById",
                table: "photo",
                type: "TEXT",
                nullable: true);
            migrationBuilder.AddColumn<Guid>(
                name: "MadeById",
                table: "notice_route",
                type: "TEXT",
                nullable: true);
            migrationBuilder.AddColumn<Guid>(
                name: "MadeById",
                table: "mqtt_credential",
                type: "TEXT",
                nullable: true);

            // Until now a name was never given twice, so whoever bears it is whoever entered it.
            migrationBuilder.Sql(OfWhoeverBears("observation", "By", "ById"));
            migrationBuilder.Sql(OfWhoeverBears("photo", "By", "ById"));
            migrationBuilder.Sql(OfWhoeverBears("notice_route", "MadeBy", "MadeById"));
            migrationBuilder.Sql(OfWhoeverBears("mqtt_credential", "MadeBy", "MadeById"));
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropColumn(
                name: "ById",
                table: "observation");
            migrationBuilder.DropColumn(
                name: "ById",
                table: "photo");
            migrationBuilder.DropColumn(
                name: "MadeById",
                table: "notice_route");
            migrationBuilder.DropColumn(
                name: "MadeById",
                table: "mqtt_credential");
        }

        private static string OfWhoeverBears(string table, string name, string id) =>
            $"UPDATE {table} SET \"{id}\" = (SELECT \"Id\" FROM \"AspNetUsers\" WHERE \"DisplayName\" = {table}.\"{name}\") WHERE \"{name}\" IS NOT NULL";
    }
}
