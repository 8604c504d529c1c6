using FermentWatch.Acts.Households;
using FermentWatch.Kinetics;
using FermentWatch.Kitchen.Forecasts;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.PuttingUp;
using FermentWatch.Kitchen.RoundAnswers;
using FermentWatch.Kitchen.Words;
using NodaTime;
using NodaTime.Extensions;

namespace FermentWatch.Acts.Jars;

/// <summary>
/// Puts up one jar or several alike. A form acts once, by the rule of <see cref="SentForm"/>: its id names the batch on record, and what it
/// says the jars, so that it may be sent again by a phone that heard no answer, days later or after a restart.
/// </summary>
[OpenToRecorders]
public sealed class PutUpJars(IJarBook jars, IHouseholdBook households, ReadyPlaces ready, ReadyStarters starters, CorrectJar correct,
    IForecastRenewal renewal, TimeProvider clock)
{
    /// <summary>Puts up jars, or tells every field that is wrong or odd.</summary>
    public async Task<PutUpAnswer> DoAsync(PutUpForm form, EntryMark mark, CancellationToken cancellationToken)
    {
        string content = PutUp.ContentOf(form);
        IReadOnlyList<Jar> before = await jars.OfBatchAsync(mark.Id, cancellationToken);
        IReadOnlyList<Jar> own = await jars.OfBatchAsync(SentForm.OwnId(mark.Id, content), cancellationToken);
        string? Filed(Guid batch) => (batch == mark.Id ? before : own) is not [var first, ..] ? null
            : first.Id == PutUp.IdOf(batch, content, 0) ? content : "";
        SentForm sent = SentForm.Of(mark.Id, content, mark.Again, Filed);
        if (sent.IsFiled)
            return new PutUpAnswer(new PutUpOrder(sent.Id == mark.Id ? before : own));
        return sent.IsAskedAbout || sent.Corrects ? await SentBeforeAsync(before, form, mark, cancellationToken)
            : await FileAsync(form, mark, sent.Id, cancellationToken);
    }

    /// <summary>Once it is on record it goes on when the caller has gone: who taps twice gives up the first.</summary>
    private async Task<PutUpAnswer> FileAsync(PutUpForm form, EntryMark mark, Guid batch, CancellationToken cancellationToken)
    {
        Household household = await households.ReadAsync(cancellationToken);
        PutUpOrder order = PutUp.Read(form, household, await ready.MakeAsync(cancellationToken), mark.At(clock.GetUtcNow().ToInstant()),
            await starters.NamedByAsync(form, cancellationToken), batch);
        if (order.Jars.Count == 0)
            return new PutUpAnswer(order);
        IReadOnlyList<Jar> stored = await jars.AddAsync(order.Jars, CancellationToken.None);
        if (stored[0].Id != order.Jars[0].Id)
            return await SentBeforeAsync(stored, form, mark, cancellationToken);
        await renewal.RunAsync(stored, CancellationToken.None);
        return new PutUpAnswer(new PutUpOrder(stored));
    }

    private async Task<PutUpAnswer> SentBeforeAsync(IReadOnlyList<Jar> before, PutUpForm form, EntryMark mark, CancellationToken cancellationToken)
    {
        var correction = new CorrectionOrder(null, [], [], []);
        if (mark.Again == Again.Correction && before is [var only] && await jars.FindAsync(only.Number, cancellationToken) is { } jar)
            correction = await correct.DoAsync(jar, CorrectionForm.Of(form), mark, cancellationToken);
        if (correction.Corrected is { } corrected)
            return new PutUpAnswer([], [], []) { Corrected = corrected };
        return new PutUpAnswer([], correction.Refusals, correction.Doubts)
        {
            SentBefore = before, Asked = Question(before, (await households.ReadAsync(cancellationToken)).MassUnit),
        };
    }

    private static string Question(IReadOnlyList<Jar> before, MassUnit unit) =>
        $"You sent this form before with {MeasureWords.Mass(before[0].Portions[0].MassKilograms, unit)} of {before[0].Portions[0].Produce}: "
        + $"that is {(before.Count == 1 ? "jar" : "jars")} {string.Join(", ", before.Select(each => each.Number))}. Was it a correction, or "
        + "another jar?";
}

/// <summary>What a put-up came to.</summary>
/// <param name="Jars">The jars, with their numbers; empty where none were put up.</param>
/// <param name="Refusals">What was wrong.</param>
/// <param name="Doubts">What is odd and was not insisted on.</param>
public sealed record PutUpAnswer(IReadOnlyList<Jar> Jars, IReadOnlyList<Refusal> Refusals, IReadOnlyList<Doubt> Doubts)
{
    public PutUpAnswer(PutUpOrder order) : this(order.Jars, order.Refusals, order.Doubts)
    {
    }

    /// <summary>What the form was sent before with, as a question; null where it was not, or somebody said what it is now.</summary>
    public string? Asked { get; init; }

    /// <summary>The jars the form put up before; empty where nothing is asked.</summary>
    public IReadOnlyList<Jar> SentBefore { get; init; } = [];

    /// <summary>The jar that was put right instead; null where none was.</summary>
    public Jar? Corrected { get; init; }
}

/// <summary>Jars whose brine may start another at present.</summary>
public sealed class ReadyStarters(IJarBook jars, IForecastBook forecasts, IHouseholdBook households, TimeProvider clock)
{
    /// <summary>Those a form may name; none where it names none, since finding them costs a look at every jar.</summary>
    public async Task<IReadOnlyList<StarterSource>> NamedByAsync(PutUpForm form, CancellationToken cancellationToken) =>
        string.IsNullOrWhiteSpace(form.StarterFrom) ? [] : await OfferAsync(cancellationToken);

    /// <summary>Every one, by number.</summary>
    public async Task<IReadOnlyList<StarterSource>> OfferAsync(CancellationToken cancellationToken)
    {
        DateTimeZone zone = (await households.ReadAsync(cancellationToken)).Zone;
        var latest = (await forecasts.LatestAsync(cancellationToken)).ToDictionary(forecast => forecast.JarId);
        Instant now = clock.GetUtcNow().ToInstant();
        return [.. (await jars.KeptAsync(cancellationToken)).Select(jar =>
            StarterSource.Of(jar, latest.GetValueOrDefault(jar.Id), zone, now)).OfType<StarterSource>()];
    }
}
