using FermentWatch.Kinetics;
using FermentWatch.Kitchen.Sensors;
using FermentWatch.Kitchen.Typed;

namespace FermentWatch.Acts.Sensors;

/// <summary>Where rules for sensors that were not made for us are handed in, by the API and the command line.</summary>
public sealed class RuleDesk(ISourceRuleBook rules, ISensorBook sensors, TimeProvider clock)
{
    /// <summary>Files a rule, or tells everything that is wrong with it.</summary>
    public async Task<RuleEntry> AddAsync(RuleForm form, CancellationToken cancellationToken)
    {
        RuleEntry entry = RuleEntry.Read(form, Guid.CreateVersion7(clock.GetUtcNow()));
        if (entry.Rule is not { } rule)
            return entry;
        if (rule.SensorSlug is { } slug && await sensors.FindAsync(slug, cancellationToken) is null)
            return new RuleEntry(null, [await UnknownAsync(slug, cancellationToken)]);
        await rules.AddAsync(rule, cancellationToken);
        return entry;
    }

    private async Task<Refusal> UnknownAsync(string slug, CancellationToken cancellationToken)
    {
        string[] known = [.. (await sensors.AllAsync(cancellationToken)).Where(sensor => sensor.RemovedAt is null).Select(sensor => sensor.Slug)];
        string right = NearestName.Of(slug, known) is { } nearest ? $"did you mean {nearest}?"
            : known.Length > 0 ? $"one of {string.Join(", ", known)} would be right" : "add the sensor first: there is none in service";
        return new Refusal("sensor", slug, right);
    }
}
