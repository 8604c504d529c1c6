using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace FermentWatch.Storage.Records.Migrations
{
    /// <inheritdoc />
    public partial class Initial : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "AspNetRoles",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    Name = table.Column<string>(type: "TEXT", maxLength: 256, nullable: true),
                    NormalizedName = table.Column<string>(type: "TEXT", maxLength: 256, nullable: true),
                    ConcurrencyStamp = table.Column<string>(type: "TEXT", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_AspNetRoles", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "AspNetUsers",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    DisplayName = table.Column<string>(type: "TEXT", nullable: false),
                    UserName = table.Column<string>(type: "TEXT", maxLength: 256, nullable: true),
                    NormalizedUserName = table.Column<string>(type: "TEXT", maxLength: 256, nullable: true),
                    Email = table.Column<string>(type: "TEXT", maxLength: 256, nullable: true),
                    NormalizedEmail = table.Column<string>(type: "TEXT", maxLength: 256, nullable: true),
                    EmailConfirmed = table.Column<bool>(type: "INTEGER", nullable: false),
                    PasswordHash = table.Column<string>(type: "TEXT", nullable: true),
                    SecurityStamp = table.Column<string>(type: "TEXT", nullable: true),
                    ConcurrencyStamp = table.Column<string>(type: "TEXT", nullable: true),
                    PhoneNumber = table.Column<string>(type: "TEXT", nullable: true),
                    PhoneNumberConfirmed = table.Column<bool>(type: "INTEGER", nullable: false),
                    TwoFactorEnabled = table.Column<bool>(type: "INTEGER", nullable: false),
                    LockoutEnd = table.Column<DateTimeOffset>(type: "TEXT", nullable: true),
                    LockoutEnabled = table.Column<bool>(type: "INTEGER", nullable: false),
                    AccessFailedCount = table.Column<int>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_AspNetUsers", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "DataProtectionKeys",
                columns: table => new
                {
                    Id = table.Column<int>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    FriendlyName = table.Column<string>(type: "TEXT", nullable: true),
                    Xml = table.Column<string>(type: "TEXT", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_DataProtectionKeys", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "announcement",
                columns: table => new
                {
                    Topic = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_announcement", x => x.Topic);
                });

            migrationBuilder.CreateTable(
                name: "calendar_feed",
                columns: table => new
                {
                    Person = table.Column<string>(type: "TEXT", nullable: false),
                    Secret = table.Column<string>(type: "TEXT", nullable: false),
                    MadeAt = table.Column<long>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_calendar_feed", x => x.Person);
                });

            migrationBuilder.CreateTable(
                name: "duty",
                columns: table => new
                {
                    Person = table.Column<string>(type: "TEXT", nullable: false),
                    Days = table.Column<int>(type: "INTEGER", nullable: false),
                    QuietFrom = table.Column<string>(type: "TEXT", nullable: true),
                    QuietUntil = table.Column<string>(type: "TEXT", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_duty", x => x.Person);
                });

            migrationBuilder.CreateTable(
                name: "facts_revision",
                columns: table => new
                {
                    Id = table.Column<int>(type: "INTEGER", nullable: false),
                    Facts = table.Column<long>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_facts_revision", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "forecast",
                columns: table => new
                {
                    JarId = table.Column<Guid>(type: "TEXT", nullable: false),
                    AsOf = table.Column<long>(type: "INTEGER", nullable: false),
                    Origin = table.Column<long>(type: "INTEGER", nullable: false),
                    Inputs = table.Column<string>(type: "TEXT", nullable: false),
                    Content = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_forecast", x => x.JarId);
                });

            migrationBuilder.CreateTable(
                name: "forecast_mark",
                columns: table => new
                {
                    JarId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Day = table.Column<string>(type: "TEXT", nullable: false),
                    AsOf = table.Column<long>(type: "INTEGER", nullable: false),
                    ModelVersion = table.Column<string>(type: "TEXT", nullable: false),
                    AcidLineP10 = table.Column<double>(type: "REAL", nullable: true),
                    AcidLineP50 = table.Column<double>(type: "REAL", nullable: true),
                    AcidLineP90 = table.Column<double>(type: "REAL", nullable: true),
                    HasTarget = table.Column<bool>(type: "INTEGER", nullable: false),
                    TargetP10 = table.Column<double>(type: "REAL", nullable: true),
                    TargetP50 = table.Column<double>(type: "REAL", nullable: true),
                    TargetP90 = table.Column<double>(type: "REAL", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_forecast_mark", x => new { x.JarId, x.Day });
                });

            migrationBuilder.CreateTable(
                name: "guest_link",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    Name = table.Column<string>(type: "TEXT", nullable: false),
                    SecretHash = table.Column<string>(type: "TEXT", nullable: false),
                    MadeBy = table.Column<string>(type: "TEXT", nullable: false),
                    MadeAt = table.Column<long>(type: "INTEGER", nullable: false),
                    ExpiresAt = table.Column<long>(type: "INTEGER", nullable: false),
                    WithdrawnAt = table.Column<long>(type: "INTEGER", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_guest_link", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "hand_over",
                columns: table => new
                {
                    Date = table.Column<string>(type: "TEXT", nullable: false),
                    Person = table.Column<string>(type: "TEXT", nullable: false),
                    By = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_hand_over", x => x.Date);
                });

            migrationBuilder.CreateTable(
                name: "household",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    Name = table.Column<string>(type: "TEXT", nullable: false),
                    TimeZoneId = table.Column<string>(type: "TEXT", nullable: false),
                    RoundAt = table.Column<string>(type: "TEXT", nullable: false),
                    EveningAt = table.Column<string>(type: "TEXT", nullable: false),
                    TemperatureUnit = table.Column<int>(type: "INTEGER", nullable: false),
                    MassUnit = table.Column<int>(type: "INTEGER", nullable: false),
                    Mould = table.Column<int>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_household", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "jar",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    Number = table.Column<int>(type: "INTEGER", nullable: false),
                    Name = table.Column<string>(type: "TEXT", nullable: false),
                    BatchId = table.Column<Guid>(type: "TEXT", nullable: false),
                    PackedAt = table.Column<long>(type: "INTEGER", nullable: false),
                    Portions = table.Column<string>(type: "TEXT", nullable: false),
                    Cut = table.Column<string>(type: "TEXT", nullable: false),
                    AddedWaterKilograms = table.Column<double>(type: "REAL", nullable: false),
                    VesselLitres = table.Column<double>(type: "REAL", nullable: false),
                    Cover = table.Column<int>(type: "INTEGER", nullable: false),
                    Lid = table.Column<int>(type: "INTEGER", nullable: false),
                    Target = table.Column<int>(type: "INTEGER", nullable: false),
                    EndedAt = table.Column<long>(type: "INTEGER", nullable: true),
                    Salting_Knowledge = table.Column<int>(type: "INTEGER", nullable: false),
                    Salting_Percent = table.Column<double>(type: "REAL", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_jar", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "muted_kind",
                columns: table => new
                {
                    Kind = table.Column<int>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_muted_kind", x => x.Kind);
                });

            migrationBuilder.CreateTable(
                name: "notice",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    Key = table.Column<string>(type: "TEXT", nullable: false),
                    RouteId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Person = table.Column<string>(type: "TEXT", nullable: false),
                    Title = table.Column<string>(type: "TEXT", nullable: false),
                    Body = table.Column<string>(type: "TEXT", nullable: false),
                    Question = table.Column<string>(type: "TEXT", nullable: true),
                    DueAt = table.Column<long>(type: "INTEGER", nullable: false),
                    ExpiresAt = table.Column<long>(type: "INTEGER", nullable: false),
                    State = table.Column<int>(type: "INTEGER", nullable: false),
                    Attempts = table.Column<int>(type: "INTEGER", nullable: false),
                    NextAttemptAt = table.Column<long>(type: "INTEGER", nullable: false),
                    SettledAt = table.Column<long>(type: "INTEGER", nullable: true),
                    LastTrouble = table.Column<string>(type: "TEXT", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_notice", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "notice_route",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    Person = table.Column<string>(type: "TEXT", nullable: false),
                    Channel = table.Column<int>(type: "INTEGER", nullable: false),
                    Address = table.Column<string>(type: "TEXT", nullable: false),
                    Secret = table.Column<string>(type: "TEXT", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_notice_route", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "place",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    Name = table.Column<string>(type: "TEXT", nullable: false, collation: "NOCASE"),
                    ShelfOrder = table.Column<int>(type: "INTEGER", nullable: false),
                    Typical = table.Column<int>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_place", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "push_key_pair",
                columns: table => new
                {
                    PublicKey = table.Column<byte[]>(type: "BLOB", nullable: false),
                    PrivateKey = table.Column<byte[]>(type: "BLOB", nullable: false),
                    MadeAt = table.Column<long>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_push_key_pair", x => x.PublicKey);
                });

            migrationBuilder.CreateTable(
                name: "round",
                columns: table => new
                {
                    Date = table.Column<string>(type: "TEXT", nullable: false),
                    DueAt = table.Column<long>(type: "INTEGER", nullable: false),
                    OpenedAt = table.Column<long>(type: "INTEGER", nullable: false),
                    Missed = table.Column<bool>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_round", x => x.Date);
                });

            migrationBuilder.CreateTable(
                name: "round_pause",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    From = table.Column<string>(type: "TEXT", nullable: false),
                    Until = table.Column<string>(type: "TEXT", nullable: false),
                    By = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_round_pause", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "sensor",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    Key = table.Column<int>(type: "INTEGER", nullable: false),
                    Slug = table.Column<string>(type: "TEXT", nullable: false),
                    Name = table.Column<string>(type: "TEXT", nullable: false),
                    AddedAt = table.Column<long>(type: "INTEGER", nullable: false),
                    RemovedAt = table.Column<long>(type: "INTEGER", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_sensor", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "source_rule",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    TopicFilter = table.Column<string>(type: "TEXT", nullable: false),
                    SensorSlug = table.Column<string>(type: "TEXT", nullable: true),
                    Payload = table.Column<int>(type: "INTEGER", nullable: false),
                    Quantity = table.Column<int>(type: "INTEGER", nullable: true),
                    ValuePointer = table.Column<string>(type: "TEXT", nullable: true),
                    Unit = table.Column<string>(type: "TEXT", nullable: true),
                    UnitPointer = table.Column<string>(type: "TEXT", nullable: true),
                    Time = table.Column<int>(type: "INTEGER", nullable: false),
                    TimePointer = table.Column<string>(type: "TEXT", nullable: true),
                    RecordName = table.Column<string>(type: "TEXT", nullable: true),
                    Offset = table.Column<double>(type: "REAL", nullable: false),
                    PlausibleLow = table.Column<double>(type: "REAL", nullable: true),
                    PlausibleHigh = table.Column<double>(type: "REAL", nullable: true),
                    LongestSilence = table.Column<long>(type: "INTEGER", nullable: true),
                    Position = table.Column<int>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_source_rule", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "told_occasion",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    Key = table.Column<string>(type: "TEXT", nullable: false),
                    Kind = table.Column<int>(type: "INTEGER", nullable: false),
                    Subject = table.Column<Guid>(type: "TEXT", nullable: false),
                    Cause = table.Column<string>(type: "TEXT", nullable: false),
                    ToldAt = table.Column<long>(type: "INTEGER", nullable: false),
                    LastSeenAt = table.Column<long>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_told_occasion", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "AspNetRoleClaims",
                columns: table => new
                {
                    Id = table.Column<int>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    RoleId = table.Column<Guid>(type: "TEXT", nullable: false),
                    ClaimType = table.Column<string>(type: "TEXT", nullable: true),
                    ClaimValue = table.Column<string>(type: "TEXT", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_AspNetRoleClaims", x => x.Id);
                    table.ForeignKey(
                        name: "FK_AspNetRoleClaims_AspNetRoles_RoleId",
                        column: x => x.RoleId,
                        principalTable: "AspNetRoles",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "AspNetUserClaims",
                columns: table => new
                {
                    Id = table.Column<int>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    UserId = table.Column<Guid>(type: "TEXT", nullable: false),
                    ClaimType = table.Column<string>(type: "TEXT", nullable: true),
                    ClaimValue = table.Column<string>(type: "TEXT", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_AspNetUserClaims", x => x.Id);
                    table.ForeignKey(
                        name: "FK_AspNetUserClaims_AspNetUsers_UserId",
                        column: x => x.UserId,
                        principalTable: "AspNetUsers",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "AspNetUserLogins",
                columns: table => new
                {
                    LoginProvider = table.Column<string>(type: "TEXT", nullable: false),
                    ProviderKey = table.Column<string>(type: "TEXT", nullable: false),
                    ProviderDisplayName = table.Column<string>(type: "TEXT", nullable: true),
                    UserId = table.Column<Guid>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_AspNetUserLogins", x => new { x.LoginProvider, x.ProviderKey });
                    table.ForeignKey(
                        name: "FK_AspNetUserLogins_AspNetUsers_UserId",
                        column: x => x.UserId,
                        principalTable: "AspNetUsers",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "AspNetUserRoles",
                columns: table => new
                {
                    UserId = table.Column<Guid>(type: "TEXT", nullable: false),
                    RoleId = table.Column<Guid>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_AspNetUserRoles", x => new { x.UserId, x.RoleId });
                    table.ForeignKey(
                        name: "FK_AspNetUserRoles_AspNetRoles_RoleId",
                        column: x => x.RoleId,
                        principalTable: "AspNetRoles",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "FK_AspNetUserRoles_AspNetUsers_UserId",
                        column: x => x.UserId,
                        principalTable: "AspNetUsers",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "AspNetUserTokens",
                columns: table => new
                {
                    UserId = table.Column<Guid>(type: "TEXT", nullable: false),
                    LoginProvider = table.Column<string>(type: "TEXT", nullable: false),
                    Name = table.Column<string>(type: "TEXT", nullable: false),
                    Value = table.Column<string>(type: "TEXT", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_AspNetUserTokens", x => new { x.UserId, x.LoginProvider, x.Name });
                    table.ForeignKey(
                        name: "FK_AspNetUserTokens_AspNetUsers_UserId",
                        column: x => x.UserId,
                        principalTable: "AspNetUsers",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "observation",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    JarId = table.Column<Guid>(type: "TEXT", nullable: false),
                    At = table.Column<long>(type: "INTEGER", nullable: false),
                    EnteredAt = table.Column<long>(type: "INTEGER", nullable: false),
                    By = table.Column<string>(type: "TEXT", nullable: false),
                    Note = table.Column<string>(type: "TEXT", nullable: true),
                    VoidedAt = table.Column<long>(type: "INTEGER", nullable: true),
                    VoidedBy = table.Column<string>(type: "TEXT", nullable: true),
                    kind = table.Column<string>(type: "TEXT", maxLength: 13, nullable: false),
                    Opened = table.Column<bool>(type: "INTEGER", nullable: true),
                    Ph = table.Column<double>(type: "REAL", nullable: true),
                    Method = table.Column<string>(type: "TEXT", nullable: true),
                    CheckedInBuffer = table.Column<bool>(type: "INTEGER", nullable: true),
                    PaleBrine = table.Column<bool>(type: "INTEGER", nullable: true),
                    Blended = table.Column<bool>(type: "INTEGER", nullable: true),
                    Sighted = table.Column<int>(type: "INTEGER", nullable: true),
                    Stage = table.Column<int>(type: "INTEGER", nullable: true),
                    Verdict = table.Column<int>(type: "INTEGER", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_observation", x => x.Id);
                    table.ForeignKey(
                        name: "FK_observation_jar_JarId",
                        column: x => x.JarId,
                        principalTable: "jar",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "jar_placement",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    JarId = table.Column<Guid>(type: "TEXT", nullable: false),
                    PlaceId = table.Column<Guid>(type: "TEXT", nullable: false),
                    From = table.Column<long>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_jar_placement", x => x.Id);
                    table.ForeignKey(
                        name: "FK_jar_placement_jar_JarId",
                        column: x => x.JarId,
                        principalTable: "jar",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "FK_jar_placement_place_PlaceId",
                        column: x => x.PlaceId,
                        principalTable: "place",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "mqtt_credential",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    User = table.Column<string>(type: "TEXT", nullable: false),
                    PasswordHash = table.Column<string>(type: "TEXT", nullable: false),
                    TopicFilter = table.Column<string>(type: "TEXT", nullable: false),
                    SensorId = table.Column<Guid>(type: "TEXT", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_mqtt_credential", x => x.Id);
                    table.ForeignKey(
                        name: "FK_mqtt_credential_sensor_SensorId",
                        column: x => x.SensorId,
                        principalTable: "sensor",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "probe_check",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    SensorId = table.Column<Guid>(type: "TEXT", nullable: false),
                    At = table.Column<long>(type: "INTEGER", nullable: false),
                    EnteredAt = table.Column<long>(type: "INTEGER", nullable: false),
                    By = table.Column<string>(type: "TEXT", nullable: false),
                    Points = table.Column<string>(type: "TEXT", nullable: false),
                    VoidedAt = table.Column<long>(type: "INTEGER", nullable: true),
                    VoidedBy = table.Column<string>(type: "TEXT", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_probe_check", x => x.Id);
                    table.ForeignKey(
                        name: "FK_probe_check_sensor_SensorId",
                        column: x => x.SensorId,
                        principalTable: "sensor",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "rejudge_order",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    SensorId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Quantity = table.Column<int>(type: "INTEGER", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_rejudge_order", x => x.Id);
                    table.ForeignKey(
                        name: "FK_rejudge_order_sensor_SensorId",
                        column: x => x.SensorId,
                        principalTable: "sensor",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "sensor_placement",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    SensorId = table.Column<Guid>(type: "TEXT", nullable: false),
                    PlaceId = table.Column<Guid>(type: "TEXT", nullable: true),
                    JarId = table.Column<Guid>(type: "TEXT", nullable: true),
                    From = table.Column<long>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_sensor_placement", x => x.Id);
                    table.ForeignKey(
                        name: "FK_sensor_placement_jar_JarId",
                        column: x => x.JarId,
                        principalTable: "jar",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_sensor_placement_place_PlaceId",
                        column: x => x.PlaceId,
                        principalTable: "place",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_sensor_placement_sensor_SensorId",
                        column: x => x.SensorId,
                        principalTable: "sensor",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "source_feed",
                columns: table => new
                {
                    RuleId = table.Column<Guid>(type: "TEXT", nullable: false),
                    SensorId = table.Column<Guid>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_source_feed", x => new { x.RuleId, x.SensorId });
                    table.ForeignKey(
                        name: "FK_source_feed_sensor_SensorId",
                        column: x => x.SensorId,
                        principalTable: "sensor",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_source_feed_source_rule_RuleId",
                        column: x => x.RuleId,
                        principalTable: "source_rule",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "observation_entry",
                columns: table => new
                {
                    Seq = table.Column<long>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    ObservationId = table.Column<Guid>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_observation_entry", x => x.Seq);
                    table.ForeignKey(
                        name: "FK_observation_entry_observation_ObservationId",
                        column: x => x.ObservationId,
                        principalTable: "observation",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "photo",
                columns: table => new
                {
                    ObservationId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Jpeg = table.Column<byte[]>(type: "BLOB", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_photo", x => x.ObservationId);
                    table.ForeignKey(
                        name: "FK_photo_observation_ObservationId",
                        column: x => x.ObservationId,
                        principalTable: "observation",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.InsertData(
                table: "facts_revision",
                columns: new[] { "Id", "Facts" },
                values: new object[] { 1, 0L });

            migrationBuilder.CreateIndex(
                name: "IX_AspNetRoleClaims_RoleId",
                table: "AspNetRoleClaims",
                column: "RoleId");

            migrationBuilder.CreateIndex(
                name: "RoleNameIndex",
                table: "AspNetRoles",
                column: "NormalizedName",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_AspNetUserClaims_UserId",
                table: "AspNetUserClaims",
                column: "UserId");

            migrationBuilder.CreateIndex(
                name: "IX_AspNetUserLogins_UserId",
                table: "AspNetUserLogins",
                column: "UserId");

            migrationBuilder.CreateIndex(
                name: "IX_AspNetUserRoles_RoleId",
                table: "AspNetUserRoles",
                column: "RoleId");

            migrationBuilder.CreateIndex(
                name: "EmailIndex",
                table: "AspNetUsers",
                column: "NormalizedEmail");

            migrationBuilder.CreateIndex(
                name: "UserNameIndex",
                table: "AspNetUsers",
                column: "NormalizedUserName",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_calendar_feed_Secret",
                table: "calendar_feed",
                column: "Secret",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_guest_link_SecretHash",
                table: "guest_link",
                column: "SecretHash",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_jar_EndedAt",
                table: "jar",
                column: "EndedAt");

            migrationBuilder.CreateIndex(
                name: "IX_jar_Number",
                table: "jar",
                column: "Number",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_jar_placement_JarId",
                table: "jar_placement",
                column: "JarId");

            migrationBuilder.CreateIndex(
                name: "IX_jar_placement_PlaceId",
                table: "jar_placement",
                column: "PlaceId");

            migrationBuilder.CreateIndex(
                name: "IX_mqtt_credential_SensorId",
                table: "mqtt_credential",
                column: "SensorId");

            migrationBuilder.CreateIndex(
                name: "IX_mqtt_credential_User",
                table: "mqtt_credential",
                column: "User",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_notice_Key",
                table: "notice",
                column: "Key",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_notice_State_NextAttemptAt",
                table: "notice",
                columns: new[] { "State", "NextAttemptAt" });

            migrationBuilder.CreateIndex(
                name: "IX_observation_JarId",
                table: "observation",
                column: "JarId");

            migrationBuilder.CreateIndex(
                name: "IX_observation_entry_ObservationId",
                table: "observation_entry",
                column: "ObservationId",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_place_Name",
                table: "place",
                column: "Name",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_probe_check_SensorId",
                table: "probe_check",
                column: "SensorId");

            migrationBuilder.CreateIndex(
                name: "IX_rejudge_order_SensorId",
                table: "rejudge_order",
                column: "SensorId");

            migrationBuilder.CreateIndex(
                name: "IX_sensor_Key",
                table: "sensor",
                column: "Key",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_sensor_Slug",
                table: "sensor",
                column: "Slug",
                unique: true,
                filter: "\"RemovedAt\" IS NULL");

            migrationBuilder.CreateIndex(
                name: "IX_sensor_placement_JarId",
                table: "sensor_placement",
                column: "JarId");

            migrationBuilder.CreateIndex(
                name: "IX_sensor_placement_PlaceId",
                table: "sensor_placement",
                column: "PlaceId");

            migrationBuilder.CreateIndex(
                name: "IX_sensor_placement_SensorId",
                table: "sensor_placement",
                column: "SensorId");

            migrationBuilder.CreateIndex(
                name: "IX_source_feed_SensorId",
                table: "source_feed",
                column: "SensorId");

            migrationBuilder.CreateIndex(
                name: "IX_source_rule_Position",
                table: "source_rule",
                column: "Position",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_told_occasion_Key",
                table: "told_occasion",
                column: "Key",
                unique: true);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "AspNetRoleClaims");

            migrationBuilder.DropTable(
                name: "AspNetUserClaims");

            migrationBuilder.DropTable(
                name: "AspNetUserLogins");

            migrationBuilder.DropTable(
                name: "AspNetUserRoles");

            migrationBuilder.DropTable(
                name: "AspNetUserTokens");

            migrationBuilder.DropTable(
                name: "DataProtectionKeys");

            migrationBuilder.DropTable(
                name: "announcement");

            migrationBuilder.DropTable(
                name: "calendar_feed");

            migrationBuilder.DropTable(
                name: "duty");

            migrationBuilder.DropTable(
                name: "facts_revision");

            migrationBuilder.DropTable(
                name: "forecast");

            migrationBuilder.DropTable(
                name: "forecast_mark");

            migrationBuilder.DropTable(
                name: "guest_link");

            migrationBuilder.DropTable(
                name: "hand_over");

            migrationBuilder.DropTable(
                name: "household");

            migrationBuilder.DropTable(
                name: "jar_placement");

            migrationBuilder.DropTable(
                name: "mqtt_credential");

            migrationBuilder.DropTable(
                name: "muted_kind");

            migrationBuilder.DropTable(
                name: "notice");

            migrationBuilder.DropTable(
                name: "notice_route");

            migrationBuilder.DropTable(
                name: "observation_entry");

            migrationBuilder.DropTable(
                name: "photo");

            migrationBuilder.DropTable(
                name: "probe_check");

            migrationBuilder.DropTable(
                name: "push_key_pair");

            migrationBuilder.DropTable(
                name: "rejudge_order");

            migrationBuilder.DropTable(
                name: "round");

            migrationBuilder.DropTable(
                name: "round_pause");

            migrationBuilder.DropTable(
                name: "sensor_placement");

            migrationBuilder.DropTable(
                name: "source_feed");

            migrationBuilder.DropTable(
                name: "told_occasion");

            migrationBuilder.DropTable(
                name: "AspNetRoles");

            migrationBuilder.DropTable(
                name: "AspNetUsers");

            migrationBuilder.DropTable(
                name: "observation");

            migrationBuilder.DropTable(
                name: "place");

            migrationBuilder.DropTable(
                name: "sensor");

            migrationBuilder.DropTable(
                name: "source_rule");

            migrationBuilder.DropTable(
                name: "jar");
        }
    }
}
