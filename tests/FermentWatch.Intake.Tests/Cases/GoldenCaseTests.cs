using FermentWatch.Intake.Decoding.SenMl;
using FermentWatch.Intake.Door;
using FermentWatch.Intake.Tests.Doubles;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Kitchen.Sensors;
using NodaTime;
using NodaTime.Text;

namespace FermentWatch.Intake.Tests.Cases;

public sealed class GoldenCaseTests
{
    private static readonly Instant _received = Instant.FromUtc(2026, 10, 4, 8, 0);

    public static TheoryData<string> All => [.. CaseFolder.Names()];

    public static TheoryData<string> Resolved =>
        [.. CaseFolder.Names().Where(name => GoldenCase.Read(Path.Combine(CaseFolder.Root, name)).Resolved is not null)];

    [Theory]
    [MemberData(nameof(All))]
    public async Task TakeAsync_GoldenPayload_StoresAndRejectsWhatTheCaseSays(string name)
    {
        string folder = Path.Combine(CaseFolder.Root, name);
        GoldenCase expected = GoldenCase.Read(folder);
        string topic = (await File.ReadAllTextAsync(Path.Combine(folder, "topic.txt"))).Trim();
        byte[] payload = await File.ReadAllBytesAsync(Path.Combine(folder, "payload"));
        // The examples of RFC 8428 are of 2010 and 2011.
        var household = new Household(door: new DoorOptions { LongestBack = TimeSpan.FromDays(36_525) });
        var slugs = new Dictionary<int, string>();
        foreach (string slug in (string[])["cellar", "crock-7", "a4-c1-38-0a-5b-6c", "kitchen-shelf"])
            slugs[(await household.AddSensorAsync(slug)).Sensor.Key] = slug;

        foreach (SourceRule rule in GoldenCase.ReadRules(folder))
            await household.Rules.AddAsync(rule, CancellationToken.None);

        await household.Door.TakeAsync(new IncomingMessage("case", topic, payload, _received, null), CancellationToken.None);

        Assert.Equal(
            expected.Readings.Select(reading => $"{reading.Sensor} {reading.Quantity} {reading.Value:G12} {reading.MeasuredAt} {reading.Time}"),
            household.Log.Stored.Select(reading =>
                $"{slugs[reading.SensorKey]} {MeasuredQuantity.Of(reading.Quantity).Name} {reading.Value:G12} "
                + $"{InstantPattern.ExtendedIso.Format(reading.MeasuredAt)} {reading.TimeSource}"));
        Assert.Equal(
            expected.Rejects.Select(reject => $"{reject.Reason}: {reject.Example}"),
            household.Log.Rejects.Select(reject => $"{reject.Reason}: {reject.Example}"));
        Assert.Equal(
            expected.Offers.Select(offer => $"{offer.Place} {offer.Quantity} {offer.Value:G12} {offer.Unit} {offer.Name}"),
            household.Door.Offers.All().Select(offer =>
                $"{offer.ValuePointer} {MeasuredQuantity.Of(offer.Quantity).Name} {offer.Value:G12} {offer.UnitSymbol} {offer.SuggestedSlug}"));
        Assert.All(household.Log.Rejects, reject => Assert.EndsWith(".", reject.Explanation));
    }

    [Theory]
    [MemberData(nameof(Resolved))]
    public async Task Read_GoldenPack_ResolvesToTheFormTheCaseGives(string name)
    {
        string folder = Path.Combine(CaseFolder.Root, name);
        IReadOnlyList<GoldenCase.ExpectedRecord> resolved = GoldenCase.Read(folder).Resolved!;

        SenMlPack pack = SenMlReader.Read(await File.ReadAllBytesAsync(Path.Combine(folder, "payload")), _received);

        Assert.Equal(
            resolved.Select(record => $"{record.N} {record.U} {record.T:F3} {record.V:G12} {(record.Vs ?? record.Vb ?? record.Vd)?.GetRawText()}"),
            pack.Records.Select(record =>
                $"{record.Name} {record.Unit} {record.MeasuredAt.ToUnixTimeMilliseconds() / 1000.0:F3} {record.Number:G12} {record.Other}"));
    }
}
