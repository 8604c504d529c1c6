using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Topics;

namespace FermentWatch.Kitchen.Publishing;

/// <summary>
/// What a home hub is told of a jar, so that it shows it without being set up: the open discovery convention, by which
/// <c>PREFIX/COMPONENT/NODE/OBJECT/config</c> holds retained JSON about one value, and an empty payload takes it back.
/// </summary>
public static class JarAnnouncement
{
    // What a hub writes where a field is missing: a forecast may be withdrawn.
    private const string Missing = "None";

    /// <summary>The topics with what is to be retained on each.</summary>
    public static IEnumerable<(string Topic, string Payload)> Of(Jar jar, string prefix)
    {
        string id = string.Create(CultureInfo.InvariantCulture, $"jar_{jar.Number}");
        yield return Value(jar, prefix, id, "expected_ph", "Expected pH", nameof(JarState.ExpectedPhP50), null);
        yield return Value(jar, prefix, id, "expected_acidity", "Expected acidity", nameof(JarState.ExpectedAcidityPercentLacticP50), "%");
        yield return Value(jar, prefix, id, "days_to_target", "Probably sour enough in", nameof(JarState.DaysToTargetP50), "d");
        yield return Value(jar, prefix, id, "acid_line", "Acid line", nameof(JarState.AcidLine), null);
        JsonObject button = About(jar, id, "looked_at", "Looked at, all well");
        button["command_topic"] = OwnTopics.JarButton(jar.Number);
        yield return ($"{prefix}/button/fermentwatch/{id}_looked_at/config", button.ToJsonString());
    }

    private static (string Topic, string Payload) Value(Jar jar, string prefix, string id, string what, string name, string field, string? unit)
    {
        JsonObject about = About(jar, id, what, name);
        about["state_topic"] = OwnTopics.JarState(jar.Number);
        about["value_template"] = $"{{{{ value_json.{JsonNamingPolicy.CamelCase.ConvertName(field)} | default('{Missing}') }}}}";
        if (unit is not null)
            about["unit_of_measurement"] = unit;
        return ($"{prefix}/sensor/fermentwatch/{id}_{what}/config", about.ToJsonString());
    }

    private static JsonObject About(Jar jar, string id, string what, string name) => new()
    {
        ["name"] = name,
        ["unique_id"] = $"fermentwatch_{id}_{what}",
        ["availability_topic"] = OwnTopics.ServiceStatus,
        ["device"] = new JsonObject
        {
            ["identifiers"] = new JsonArray($"fermentwatch_{id}"),
            ["name"] = string.Create(CultureInfo.InvariantCulture, $"Jar {jar.Number}, {jar.Name}"),
        },
    };
}
