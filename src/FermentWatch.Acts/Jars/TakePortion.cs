using FermentWatch.Kinetics;
using FermentWatch.Kitchen.ColdStore;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.RoundAnswers;
using FermentWatch.Kitchen.Typed;
using FermentWatch.Kitchen.Words;
using NodaTime;
using NodaTime.Extensions;

namespace FermentWatch.Acts.Jars;

/// <summary>Says that something was taken out of a jar to eat it.</summary>
[OpenToChildren, OpenToRecorders]
public sealed class TakePortion(IHouseholdBook households, EntryFiling filing, TimeProvider clock)
{
    /// <summary>What was written down, what was wrong, or what is asked.</summary>
    /// <param name="jar">The jar, whole.</param>
    /// <param name="form">What was typed.</param>
    /// <param name="mark">Who enters it and under which id.</param>
    /// <param name="cancellationToken">Gives up before anything is filed.</param>
    public async Task<PortionEntry> DoAsync(Jar jar, PortionForm form, EntryMark mark, CancellationToken cancellationToken)
    {
        Household household = await households.ReadAsync(cancellationToken);
        if (ChildRules.Taking(mark.Role, jar, household.Zone) is { } refusal)
            return new PortionEntry(null, [refusal]);
        PortionEntry entry = PortionEntry.Read(form, jar, household.Zone, clock.GetUtcNow().ToInstant(), mark);
        if (entry.Portion is not { } read)
            return entry;
        var sent = SentBefore.Of(read, jar, mark, each => each.Content, read.Under);
        if (sent.Asked is null && !sent.IsFiled)
            await filing.FileAsync(jar, sent.Observation, sent.Corrects, mark, cancellationToken);
        return entry with { Portion = sent.Observation, Asked = sent.Asked };
    }
}

/// <summary>Says that a jar is open, where nothing was taken out yet.</summary>
[OpenToChildren, OpenToRecorders]
public sealed class OpenJar(IHouseholdBook households, EntryFiling filing, TimeProvider clock)
{
    /// <summary>What was written down, what was known already, or what was wrong.</summary>
    public async Task<AnswerOutcome> DoAsync(Jar jar, OpenedForm form, EntryMark mark, CancellationToken cancellationToken)
    {
        Household household = await households.ReadAsync(cancellationToken);
        var reader = new FieldReader();
        Instant now = clock.GetUtcNow().ToInstant();
        Instant at = PortionEntry.ReadWhen(form.At, jar, household.Zone, now, mark, reader);
        string note = reader.ReadNote("note", form.Note);
        if ((ChildRules.Taking(mark.Role, jar, household.Zone) ?? PortionEntry.NotKept(jar)) is { } refusal)
            reader.Refusals.Insert(0, refusal);
        if (reader.Refusals.Count > 0)
            return new AnswerOutcome([], [], reader.Refusals);
        if (LeftInJar.OpenSince(jar) is { } since && since <= at)
        {
            string day = DateWords.Dated(since.InZone(household.Zone).Date, now.InZone(household.Zone).Date);
            return new AnswerOutcome([], [$"Jar {jar.Number} is open since {day} already."], []);
        }
        var opened = new JarOpened
        {
            Id = mark.Id, JarId = jar.Id, At = at, EnteredAt = now, By = mark.By, ById = mark.Who.AccountId, Note = note.Length == 0 ? null : note,
        };
        var sent = SentBefore.Of(opened, jar, mark, each => $"opened {each.Note}", opened.Under);
        if (sent.Asked is { } asked)
            return new AnswerOutcome([], [], []) { Asked = asked };
        if (!sent.IsFiled)
            await filing.FileAsync(jar, sent.Observation, sent.Corrects, mark, cancellationToken);
        return new AnswerOutcome([sent.Observation], [], []);
    }
}

/// <summary>What somebody typed to say what was taken out of a jar.</summary>
public sealed record PortionForm
{
    /// <summary>A share of the full jar (<c>1/4</c>, <c>25 %</c>, <c>0.25</c>), or what came to the table (<c>1 cup</c>, <c>200 g</c>).</summary>
    public string? Amount { get; init; }

    /// <summary>When, on the household's clock (<c>2026-12-04</c> or <c>2026-12-04T18:30</c>); empty is now.</summary>
    public string? At { get; init; }

    public string? Note { get; init; }
}

/// <summary>What somebody typed to say that a jar was opened.</summary>
public sealed record OpenedForm
{
    /// <summary>When, on the household's clock (<c>2026-12-04</c> or <c>2026-12-04T18:30</c>); empty is now.</summary>
    public string? At { get; init; }

    public string? Note { get; init; }
}

/// <summary>A portion that was read, or every field that was wrong.</summary>
/// <param name="Portion">The portion; null if anything was wrong.</param>
/// <param name="Refusals">What was wrong.</param>
public sealed record PortionEntry(PortionTaken? Portion, IReadOnlyList<Refusal> Refusals)
{
    private const string WouldBeRight =
        "a share of the full jar or what came to the table would be right, such as 1/4, 30 %, 1 cup, 250 ml or 200 g";

    /// <summary>Vegetables in brine weigh about as much as water: where more than that is said of a litre, something else was meant.</summary>
    private const double MostKilogramsPerLitre = 1.1;

    /// <summary>A question, where the form was sent before with another amount; else null.</summary>
    public string? Asked { get; init; }

    /// <summary>Reads the form.</summary>
    /// <param name="form">What was typed.</param>
    /// <param name="jar">The jar.</param>
    /// <param name="zone">The household's zone.</param>
    /// <param name="now">The present.</param>
    /// <param name="entry">Who enters it and under which id.</param>
    public static PortionEntry Read(PortionForm form, Jar jar, DateTimeZone zone, Instant now, EntryMark entry)
    {
        var reader = new FieldReader();
        (double? fraction, double? litres, double? kilograms) = ReadAmount(form.Amount, jar, reader);
        Instant at = ReadWhen(form.At, jar, zone, now, entry, reader);
        string note = reader.ReadNote("note", form.Note);
        if (NotKept(jar) is { } refusal)
            reader.Refusals.Insert(0, refusal);
        return reader.Refusals.Count > 0 ? new PortionEntry(null, reader.Refusals) : new PortionEntry(new PortionTaken
        {
            Id = entry.Id, JarId = jar.Id, At = at, EnteredAt = now, By = entry.By, ById = entry.Who.AccountId,
            Note = note.Length == 0 ? null : note, Fraction = fraction, Litres = litres, Kilograms = kilograms,
        }, []);
    }

    /// <summary>When it was: never before packing.</summary>
    internal static Instant ReadWhen(string? typed, Jar jar, DateTimeZone zone, Instant now, EntryMark entry, FieldReader reader) =>
        Instant.Max(jar.PackedAt, reader.ReadPast("when", typed, zone, entry.At(now),
            zone.AtStartOfDay(jar.PackedAt.InZone(zone).Date).ToInstant()));

    /// <summary>Why nothing is taken out of a jar that has ended; null while it is kept.</summary>
    internal static Refusal? NotKept(Jar jar) => jar.Stage is JarStage.Fermenting or JarStage.Cold ? null
        : new Refusal("jar", jar.IsFrozen ? "one in the freezer" : "one that has ended",
            "a jar that is kept would be right: reopen it, or say where this one went");

    private static (double? Fraction, double? Litres, double? Kilograms) ReadAmount(string? typed, Jar jar, FieldReader reader)
    {
        if (Amount.Percent.TryRead(typed, null, out double percent) || Amount.Number.TryRead(typed, null, out percent))
        {
            double share = typed!.Contains('%', StringComparison.Ordinal) ? percent / 100 : percent;
            return share is > 0 and <= 1 ? (share, null, null) : Wrong($"{WouldBeRight}; a share is at most 1");
        }
        if (Amount.VolumeLitres.TryRead(typed, null, out double litres))
            return litres > 0 && litres <= jar.VesselLitres ? (null, litres, null) : Wrong(AtMost($"{jar.VesselLitres:0.##} l"));
        if (Amount.MassKilograms.TryRead(typed, null, out double kilograms))
            return kilograms > 0 && kilograms <= jar.VesselLitres * MostKilogramsPerLitre ? (null, null, kilograms)
                : Wrong(AtMost($"{jar.VesselLitres * MostKilogramsPerLitre:0.##} kg"));
        return Wrong($"{WouldBeRight}{Amount.ReadTwoWays(typed)}");

        (double?, double?, double?) Wrong(string wouldBeRight)
        {
            reader.Refuse("amount", typed, wouldBeRight);
            return (null, null, null);
        }
    }

    private static string AtMost(FormattableString what) =>
        $"more than nothing and at most {FormattableString.Invariant(what)}, what this vessel holds, would be right";
}
