using FermentWatch.Kinetics;
using FermentWatch.Kinetics.Observation;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Members;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.Places;
using FermentWatch.Kitchen.PuttingUp;
using FermentWatch.Kitchen.RoundAnswers;
using FermentWatch.Kitchen.Typed;
using NodaTime;
using NodaTime.Extensions;

namespace FermentWatch.Service.Pages.Entering;

/// <summary>Where entries about jars are handed in, by the pages and by the API. After each the forecasts are renewed.</summary>
public sealed class JarDesk(IJarBook jars, IPlaceBook places, IHouseholdBook households, ReadyPlaces ready, ReadyStarters starters, ForecastRenewal renewal, TimeProvider clock)
{
    private Instant Now => clock.GetUtcNow().ToInstant();

    /// <summary>Puts up jars, or tells every field that is wrong.</summary>
    public async Task<PutUpOrder> PutUpAsync(PutUpForm form, CancellationToken cancellationToken)
    {
        Household household = await households.ReadAsync(cancellationToken);
        PutUpOrder order = PutUp.Read(form, household, await ready.MakeAsync(cancellationToken), Now, await StartersAsync(form, cancellationToken));
        if (order.Jars.Count == 0)
            return order;
        IReadOnlyList<Jar> stored = await jars.AddAsync(order.Jars, cancellationToken);
        await renewal.RunAsync(stored, cancellationToken);
        return new PutUpOrder(stored);
    }

    /// <summary>Puts the record of a jar right; what stood before is kept. What was wrong or odd, or what was corrected.</summary>
    public async Task<CorrectionOrder> CorrectAsync(Jar jar, CorrectionForm form, EntryMark mark, CancellationToken cancellationToken)
    {
        if (ChildRules.Correcting(mark.Role) is { } refusal)
            return new CorrectionOrder(null, [], [refusal], []);
        Household household = await households.ReadAsync(cancellationToken);
        IReadOnlyList<Place> known = await places.AllAsync(cancellationToken);
        CorrectionOrder order = new JarCorrecting(household, known, Now, mark.By, await StartersAsync(form, cancellationToken)).Read(jar, form);
        if (order.Corrected is not { } corrected || order.Corrections.Count == 0)
            return order;
        await jars.PutRightAsync(corrected, order.Corrections, cancellationToken);
        await renewal.RunAsync(jar.Number, cancellationToken);
        return order;
    }

    private async Task<IReadOnlyList<StarterSource>> StartersAsync(PutUpForm form, CancellationToken cancellationToken) =>
        string.IsNullOrWhiteSpace(form.StarterFrom) ? [] : await starters.OfferAsync(cancellationToken);

    /// <summary>Enters a pH; with <paramref name="corrects"/> it takes the place of an observation, which is taken back.</summary>
    public async Task<PhEntry> MeasureAsync(Jar jar, PhForm form, EntryMark mark, Guid? corrects, CancellationToken cancellationToken)
    {
        Household household = await households.ReadAsync(cancellationToken);
        if (ChildRules.Measuring(mark.Role) is { } refusal)
            return new PhEntry(null, [refusal]);
        PhEntry entry = PhEntry.Read(form, jar, household, Now, mark).AgainstWhatWasSent(jar, mark, ref corrects);
        if (entry is not { Measurement: { } measurement, Asked: null } || jar.Observations.Exists(each => each.Id == measurement.Id))
            return entry;
        if (!household.Measures)
        {
            // Whoever enters a pH has something to measure with; the household page says otherwise any day.
            household.PhTool = measurement.Method switch { PhMethod.Meter => PhTool.Meter, PhMethod.Probe => PhTool.Probe, _ => PhTool.Strips };
            await households.WriteAsync(household, cancellationToken);
        }
        if (corrects is { } wrong)
            await jars.CorrectAsync(wrong, Now, mark.By, measurement, cancellationToken);
        else
            await jars.ObserveAsync([measurement], cancellationToken);
        await renewal.RunAsync(jar.Number, cancellationToken);
        return entry;
    }

    /// <summary>Enters a titration: what was written, what was wrong, or what is asked.</summary>
    public async Task<TitrationEntry> TitrateAsync(Jar jar, TitrationForm form, EntryMark mark, CancellationToken cancellationToken)
    {
        Household household = await households.ReadAsync(cancellationToken);
        if (ChildRules.Measuring(mark.Role) is { } refusal)
            return new TitrationEntry(null, [refusal]);
        TitrationEntry entry = TitrationEntry.Read(form, jar, household.Zone, Now, mark).AgainstWhatWasSent(jar, mark, out Guid? corrects);
        if (entry is not { Titration: { } titration, Asked: null } || jar.Observations.Exists(each => each.Id == titration.Id))
            return entry;
        if (corrects is { } wrong)
            await jars.CorrectAsync(wrong, Now, mark.By, titration, cancellationToken);
        else
            await jars.ObserveAsync([titration], cancellationToken);
        await renewal.RunAsync(jar.Number, cancellationToken);
        return entry;
    }

    /// <summary>Says that a jar stands somewhere else; what was wrong, what is asked, or nothing.</summary>
    public async Task<AnswerOutcome> MoveAsync(Jar jar, MoveForm form, EntryMark mark, CancellationToken cancellationToken)
    {
        Household household = await households.ReadAsync(cancellationToken);
        IReadOnlyList<Place> known = await places.AllAsync(cancellationToken);
        var reader = new FieldReader();
        Place? place = known.FirstOrDefault(each => each.Name.Equals(form.Place?.Trim(), StringComparison.OrdinalIgnoreCase));
        if (place is null)
            reader.Refuse("place", form.Place, $"one of {string.Join(", ", known.Select(each => each.Name))} would be right");
        Instant from = reader.ReadPast("since", form.At, household.Zone, Now, jar.PackedAt);
        if (place is null || reader.Refusals.Count > 0)
            return new AnswerOutcome([], [], reader.Refusals);
        Guid id = mark.Id;
        if (jar.Placements.Find(each => each.Id == mark.Id) is { } sent && sent.PlaceId != place.Id)
        {
            string before = known.First(each => each.Id == sent.PlaceId).Name;
            if (mark.Again == Again.NotSaid)
                return new AnswerOutcome([], [], []) { Asked = $"You sent this form before with \"to {before}\". Was that wrong, or are both right?" };
            id = AnswerId.Of(mark.Id, place.Id);
            if (mark.Again == Again.Correction)
            {
                from = string.IsNullOrWhiteSpace(form.At) ? sent.From : from;
                await TakeBackMoveAsync(jar, sent, mark, cancellationToken);
            }
        }
        else if (jar.PlacementAt(from).PlaceId == place.Id)
            return new AnswerOutcome([], [], []);
        await jars.MoveAsync(new JarPlacement { Id = id, JarId = jar.Id, PlaceId = place.Id, From = from }, cancellationToken);
        await renewal.RunAsync(jar.Number, cancellationToken);
        return new AnswerOutcome([], [], []);
    }

    /// <summary>Takes back a move that was none. False if it is not of this jar, is its first place, or was taken back before.</summary>
    public async Task<bool> TakeBackMoveAsync(Jar jar, Guid placement, EntryMark mark, CancellationToken cancellationToken)
    {
        if (ChildRules.Correcting(mark.Role) is not null || jar.Placements.OrderBy(each => each.From).Skip(1).FirstOrDefault(each => each.Id == placement) is not { } move)
            return false;
        bool taken = await TakeBackMoveAsync(jar, move, mark, cancellationToken);
        await renewal.RunAsync(jar.Number, cancellationToken);
        return taken;
    }

    /// <summary>
    /// Takes back what was entered; a jar that went into the cold by it stands where it stood before, one that ended is kept again.
    /// Null where that was done, else why not.
    /// </summary>
    public async Task<Refusal?> TakeBackAsync(Jar jar, Guid observation, EntryMark mark, CancellationToken cancellationToken)
    {
        if (jar.Observations.Find(each => each.Id == observation) is not { } entry)
            return new Refusal("entry", "one of another jar", "an entry of this jar would be right");
        if (ChildRules.TakingBack(mark.Role, mark.By, entry) is { } refusal)
            return refusal;
        if (await jars.CorrectAsync(observation, Now, mark.By, null, cancellationToken)
            && jar.Placements.OrderBy(each => each.From).Skip(1).FirstOrDefault(each => GoesWith(entry, each)) is { } move)
            await TakeBackMoveAsync(jar, move, mark, cancellationToken);
        await renewal.RunAsync(jar.Number, cancellationToken);
        return null;
    }

    /// <summary>Whether a move was made by a change of stage; those of former versions bear another id and came a moment after it.</summary>
    private static bool GoesWith(Observation entry, JarPlacement placement) => entry is StageChange { Stage: JarStage.Cold }
        && (placement.Id == RoundDesk.MoveOf(entry, placement.PlaceId).Id
            || (placement.From > entry.At && placement.From - entry.At < Duration.FromSeconds(30)));

    private async Task<bool> TakeBackMoveAsync(Jar jar, JarPlacement move, EntryMark mark, CancellationToken cancellationToken)
    {
        IReadOnlyList<Place> known = await places.AllAsync(cancellationToken);
        string Name(Guid place) => known.First(each => each.Id == place).Name;
        JarPlacement before = jar.Placements.Where(each => each.Id != move.Id && each.From <= move.From).MaxBy(each => each.From)!;
        var correction = new JarCorrection
        {
            Id = Guid.CreateVersion7(clock.GetUtcNow()), JarId = jar.Id, Field = "place", Before = Name(move.PlaceId), After = Name(before.PlaceId),
            Since = move.From, EnteredAt = Now, By = mark.By,
        };
        return await jars.TakeBackMoveAsync(move.Id, correction, cancellationToken);
    }
}
