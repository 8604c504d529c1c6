using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace FermentWatch.Storage.Records.Migrations
{
    /// <inheritdoc />
    public partial class SignInsAndWhoMadeWhat : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<string>(
                name: "By",
                table: "photo",
                type: "TEXT",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "MadeBy",
                table: "notice_route",
                type: "TEXT",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "MadeBy",
                table: "mqtt_credential",
                type: "TEXT",
                nullable: true);

            migrationBuilder.AddColumn<long>(
                name: "DoorsClosedAt",
                table: "AspNetUsers",
                type: "INTEGER",
                nullable: true);

            migrationBuilder.CreateTable(
                name: "sign_in",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    AccountId = table.Column<Guid>(type: "TEXT", nullable: false),
                    BegunAt = table.Column<long>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_sign_in", x => x.Id);
                    table.ForeignKey(
                        name: "FK_sign_in_AspNetUsers_AccountId",
                        column: x => x.AccountId,
                        principalTable: "AspNetUsers",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateIndex(
                name: "IX_sign_in_AccountId",
                table: "sign_in",
                column: "AccountId");

            // Until now an account without a role counted as an adult's: those that are there stay what they were.
            migrationBuilder.Sql(
                """
                INSERT INTO "AspNetUserClaims" ("UserId", "ClaimType", "ClaimValue")
                SELECT "Id", 'http://schemas.microsoft.com/ws/2008/06/identity/claims/role', 'Adult' FROM "AspNetUsers" AS account
                WHERE NOT EXISTS (SELECT 1 FROM "AspNetUserClaims" AS claim WHERE claim."UserId" = account."Id"
                    AND claim."ClaimType" = 'http://schemas.microsoft.com/ws/2008/06/identity/claims/role')
                """);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "sign_in");

            migrationBuilder.DropColumn(
                name: "By",
                table: "photo");

            migrationBuilder.DropColumn(
                name: "MadeBy",
                table: "notice_route");

            migrationBuilder.DropColumn(
                name: "MadeBy",
                table: "mqtt_credential");

            migrationBuilder.DropColumn(
                name: "DoorsClosedAt",
                table: "AspNetUsers");
        }
    }
}
