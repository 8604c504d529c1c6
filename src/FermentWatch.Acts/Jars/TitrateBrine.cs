using FermentWatch.Kinetics;
using FermentWatch.Kinetics.Chemistry;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.RoundAnswers;
using FermentWatch.Kitchen.Typed;
using NodaTime;
using NodaTime.Extensions;

namespace FermentWatch.Acts.Jars;

/// <summary>Enters a titration of a jar's brine.</summary>
[OpenToRecorders]
public sealed class TitrateBrine(IHouseholdBook households, EntryFiling filing, TimeProvider clock)
{
    /// <summary>What was written down, what was wrong, or what is asked.</summary>
    public async Task<TitrationEntry> DoAsync(Jar jar, TitrationForm form, EntryMark mark, CancellationToken cancellationToken)
    {
        if (ChildRules.Measuring(mark.Role) is { } refusal)
            return new TitrationEntry(null, [refusal]);
        Household household = await households.ReadAsync(cancellationToken);
        TitrationEntry entry = TitrationEntry.Read(form, jar, household.Zone, clock.GetUtcNow().ToInstant(), mark);
        if (entry.Titration is not { } read)
            return entry;
        var sent = SentBefore.Of(read, jar, mark, each => each.Content, read.Under);
        if (sent.Asked is null && !sent.IsFiled)
            await filing.FileAsync(jar, sent.Observation, sent.Corrects, mark, cancellationToken);
        return entry with { Titration = sent.Observation, Asked = sent.Asked };
    }
}

/// <summary>What somebody typed to enter a titration, as typed: the per cent, or what was used for how much brine.</summary>
public sealed record TitrationForm
{
    /// <summary>Titratable acidity as lactic acid, per cent, where it was worked out already.</summary>
    public string? Percent { get; init; }

    /// <summary>Base used, mL.</summary>
    public string? BaseMillilitres { get; init; }

    /// <summary>Strength of the base, N (mol/L); empty is 0.1.</summary>
    public string? BaseNormality { get; init; }

    /// <summary>Brine titrated, mL; empty is 10.</summary>
    public string? SampleMillilitres { get; init; }

    /// <summary>When, on the household's clock; empty is now.</summary>
    public string? At { get; init; }

    public string? Note { get; init; }
}

/// <summary>A titration form that was read: the titration, or every field that was wrong.</summary>
/// <param name="Titration">The titration; null if anything was wrong.</param>
/// <param name="Refusals">What was wrong.</param>
public sealed record TitrationEntry(Titration? Titration, IReadOnlyList<Refusal> Refusals)
{
    private const double UsualNormality = 0.1, UsualSampleMillilitres = 10, MostPercent = 5;

    /// <summary>A question, where the form was sent before with another figure; else null.</summary>
    public string? Asked { get; init; }

    /// <summary>
    /// Reads the form. Per cent lactic is mL of base x normality x 0.0901 x 100 / mL of brine (general titration arithmetic; the
    /// milliequivalent weight of lactic acid is 0.0901), to pH 8.2 or the first lasting pink of phenolphthalein.
    /// </summary>
    /// <param name="form">What was typed.</param>
    /// <param name="jar">The jar.</param>
    /// <param name="zone">The household's zone.</param>
    /// <param name="now">The present.</param>
    /// <param name="entry">Who enters it and under which id.</param>
    public static TitrationEntry Read(TitrationForm form, Jar jar, DateTimeZone zone, Instant now, EntryMark entry)
    {
        var reader = new FieldReader();
        bool isWorkedOut = !string.IsNullOrWhiteSpace(form.Percent);
        double? ml = isWorkedOut ? null
            : reader.Read("base used", form.BaseMillilitres, Amount.Number, null, 0.01, 500, "the millilitres of base, or the per cent,");
        double? normality = isWorkedOut ? null : Read("strength of the base", form.BaseNormality, UsualNormality, 0.001, 2, "0.001 to 2 N", reader);
        double? sample = isWorkedOut ? null
            : Read("brine titrated", form.SampleMillilitres, UsualSampleMillilitres, 0.1, 1000, "0.1 to 1000 ml", reader);
        double percent = isWorkedOut ? reader.Read("acid", form.Percent, Amount.Percent, "%", 0, MostPercent, "0 to 5 %")
            : TitratableAcidity.PercentLacticFromTitration(ml!.Value, normality!.Value, sample!.Value);
        if (!isWorkedOut && reader.Refusals.Count == 0 && percent > MostPercent)
            reader.Refuse("base used", form.BaseMillilitres,
                FormattableString.Invariant(
                    $"that is {percent:0.#} % acid, and a brine holds 5 at most: look at the strength and the millilitres again"));
        Instant at = reader.ReadPast("when", form.At, zone, entry.At(now), zone.AtStartOfDay(jar.PackedAt.InZone(zone).Date).ToInstant());
        string note = reader.ReadNote("note", form.Note);
        return reader.Refusals.Count > 0 ? new TitrationEntry(null, reader.Refusals) : new TitrationEntry(new Titration
        {
            Id = entry.Id, JarId = jar.Id, At = Instant.Max(at, jar.PackedAt), EnteredAt = now, By = entry.By, ById = entry.Who.AccountId,
                Note = note.Length == 0 ? null : note,
            PercentLactic = Math.Round(percent, 4), BaseMillilitres = ml, BaseNormality = normality, SampleMillilitres = sample,
        }, []);
    }

    private static double Read(string field, string? typed, double ifEmpty, double low, double high, string range, FieldReader reader) =>
        string.IsNullOrWhiteSpace(typed) ? ifEmpty : reader.Read(field, typed, Amount.Number, null, low, high, range);
}
