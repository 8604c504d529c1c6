namespace FermentWatch.Storage.Archives;

/// <summary>
/// Which tables of the records a household takes along, in the order in which they are written, and which it leaves behind and why. A test
/// asks for every table that there is, so that a new one is decided upon.
/// </summary>
internal static class HouseholdTables
{
    internal const string NotUsed = "we keep nothing in it";

    /// <summary>Routes whose address is no key: by MQTT and by letter.</summary>
    private const string WithoutKeys = "Channel IN (2, 3) AND Secret IS NULL";

    internal static readonly TakenTable[] Taken =
    [
        new("household", "household", "The household: its name, zone, units and hours. One row."),
        new("place", "place", "Places where jars and sensors stand."),
        new("AspNetUsers", "account", "People who may sign in.")
        {
            Columns = ["Id", "DisplayName", "UserName", "NormalizedUserName", "DoorsClosedAt", "EmailConfirmed", "PhoneNumberConfirmed",
                "TwoFactorEnabled", "LockoutEnabled", "AccessFailedCount"],
            // Whoever keeps accounts refuses one without a stamp; it is that of no sign-in.
            Anew = ("SecurityStamp", "hex(randomblob(20))"),
        },
        new("AspNetUserClaims", "account_role", "Whether they are adults or children."),
        new("duty", "duty", "Who does the round on which days, and quiet hours."),
        new("hand_over", "hand_over", "Dates on which somebody else does the round."),
        new("round_pause", "round_pause", "Spans without a round."),
        new("sensor", "sensor", "Sensors, also those out of service."),
        new("recipe", "recipe", "Recipes that are kept."),
        new("jar", "jar", "Jars, with what went in."),
        new("jar_placement", "jar_placement", "Where jars stood, and from when."),
        new("jar_correction", "jar_correction", "What was put right in the records of jars, and what stood before."),
        new("sensor_placement", "sensor_placement", "Where sensors stood, and from when."),
        new("probe_check", "probe_check", "What pH probes showed in buffers."),
        new("source_rule", "source_rule", "How gear that was not made for us is read."),
        new("source_feed", "source_feed", "Which rule has fed which sensor."),
        new("rejudge_order", "rejudge_order", "Sensors whose readings are still to be judged again."),
        new("observation", "observation", "What was seen, measured, tasted and done with jars, told apart by kind."),
        new("observation_entry", "observation_entry", "The order in which observations were entered."),
        new("photo", "photo", "Which observation each photo belongs to; the photos are files of their own."),
        new("round", "round", "Morning rounds, one for each date, and what they asked for."),
        new("told_occasion", "told_occasion", "What was told, each cause once."),
        new("muted_kind", "muted_kind", "What this household is not told of."),
        new("notice_route", "notice_route", "How people are reached by letter and by MQTT.") { Rows = WithoutKeys },
        new("notice", "notice", "Messages, sent and still to be sent."),
        new("forecast_mark", "forecast_mark", "What was forecast of jars day by day, for looking back."),
        new("facts_revision", "facts_revision", "A count of changes."),
    ];

    /// <summary>Tables that are left out, with the reason as README.txt says it.</summary>
    internal static readonly IReadOnlyDictionary<string, string> LeftOut = new Dictionary<string, string>
    {
        ["forecast"] = "forecasts are worked out again from what is here",
        ["sign_in"] = "who is signed in: a secret",
        ["script_key"] = "keys for scripts: a secret",
        ["guest_link"] = "links for whoever looks in: a secret",
        ["calendar_feed"] = "addresses of calendars: each is a key",
        ["push_key_pair"] = "the key pair for push: a secret",
        ["mqtt_credential"] = "users and passwords of sensors: a secret",
        ["DataProtectionKeys"] = "keys: a secret",
        ["announcement"] = "what is to be taken back from brokers that stay behind",
        ["AspNetRoles"] = NotUsed,
        ["AspNetRoleClaims"] = NotUsed,
        ["AspNetUserRoles"] = NotUsed,
        ["AspNetUserLogins"] = NotUsed,
        ["AspNetUserTokens"] = NotUsed,
    };

    /// <summary>What of the taken tables is left out.</summary>
    internal static readonly string[] LeftOutOfTaken =
    [
        "passwords: each person gets a new one by 'fermentwatch member password NAME'",
        "webhooks and browsers that are told by push: their addresses hold keys",
    ];
}

/// <summary>A table that is taken along.</summary>
/// <param name="Name">The table.</param>
/// <param name="File">The name of its files.</param>
/// <param name="Words">What it holds, in a sentence.</param>
internal sealed record TakenTable(string Name, string File, string Words)
{
    /// <summary>The columns that are taken; null for all.</summary>
    internal IReadOnlyList<string>? Columns { get; init; }

    /// <summary>Which rows are taken, as SQL; all of them where it is not said.</summary>
    internal string Rows { get; init; } = "1";

    /// <summary>A column that is not taken and must not stay empty, and what makes its value, as SQL.</summary>
    internal (string Column, string Value)? Anew { get; init; }

    internal string Json => $"records/{File}.json";

    internal string Csv => $"records/{File}.csv";
}
