using System.Text.Json;
using System.Text.Json.Serialization;
using FermentWatch.Kitchen.Sensors;

namespace FermentWatch.Intake.Tests.Cases;

/// <summary>What expected.json holds. The message always comes in at 2026-10-04T08:00:00Z.</summary>
public sealed record GoldenCase
{
    private static readonly JsonSerializerOptions _options = new(JsonSerializerDefaults.Web)
    {
        UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
        ReadCommentHandling = JsonCommentHandling.Skip,
    };

    private static readonly JsonSerializerOptions _ruleOptions = new(_options) { Converters = { new JsonStringEnumConverter() } };

    /// <summary>What the case shows, for the reader.</summary>
    public required string Shows { get; init; }

    public IReadOnlyList<ExpectedReading> Readings { get; init; } = [];

    public IReadOnlyList<ExpectedReject> Rejects { get; init; } = [];

    /// <summary>What is offered as "Use this sensor?".</summary>
    public IReadOnlyList<ExpectedOffer> Offers { get; init; } = [];

    /// <summary>The pack in resolved form, where the payload is a SenML pack and the case checks it.</summary>
    public IReadOnlyList<ExpectedRecord>? Resolved { get; init; }

    public static GoldenCase Read(string folder) =>
        JsonSerializer.Deserialize<GoldenCase>(File.ReadAllText(Path.Combine(folder, "expected.json")), _options)
        ?? throw new InvalidDataException($"{folder}/expected.json is empty.");

    /// <summary>The source rules of rule.json beside it, where the case needs any.</summary>
    public static IReadOnlyList<SourceRule> ReadRules(string folder)
    {
        string file = Path.Combine(folder, "rule.json");
        return File.Exists(file) ? JsonSerializer.Deserialize<SourceRule[]>(File.ReadAllText(file), _ruleOptions)! : [];
    }

    public sealed record ExpectedReading(string Sensor, string Quantity, double Value, string MeasuredAt, string Time);

    public sealed record ExpectedOffer(string? Place, string Quantity, string Unit, double Value, string Name);

    public sealed record ExpectedReject(string Reason, string Example);

    public sealed record ExpectedRecord(string N, string? U, double T, double? V, JsonElement? Vs, JsonElement? Vb, JsonElement? Vd);
}
