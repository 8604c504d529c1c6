using FermentWatch.Kinetics;
using FermentWatch.Kinetics.Observation;
using FermentWatch.Kitchen.Entry;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Members;
using FermentWatch.Kitchen.Places;
using FermentWatch.Kitchen.PuttingUp;
using NodaTime;
using NodaTime.Extensions;

namespace FermentWatch.Service.Pages.Entering;

/// <summary>Where entries about jars are handed in, by the pages and by the API. After each the forecasts are renewed.</summary>
public sealed class JarDesk(IJarBook jars, IPlaceBook places, IHouseholdBook households, ReadyPlaces ready, ForecastRenewal renewal, TimeProvider clock)
{
    private Instant Now => clock.GetUtcNow().ToInstant();

    /// <summary>Puts up jars, or tells every field that is wrong.</summary>
    public async Task<PutUpOrder> PutUpAsync(PutUpForm form, CancellationToken cancellationToken)
    {
        Household household = await households.ReadAsync(cancellationToken);
        PutUpOrder order = PutUp.Read(form, household, await ready.MakeAsync(cancellationToken), Now);
        if (order.Refusals.Count > 0)
            return order;
        IReadOnlyList<Jar> stored = await jars.AddAsync(order.Jars, cancellationToken);
        await renewal.RunAsync(stored, cancellationToken);
        return new PutUpOrder(stored, []);
    }

    /// <summary>Enters a pH; with <paramref name="corrects"/> it takes the place of an observation, which is taken back.</summary>
    public async Task<PhEntry> MeasureAsync(Jar jar, PhForm form, EntryMark mark, Guid? corrects, CancellationToken cancellationToken)
    {
        Household household = await households.ReadAsync(cancellationToken);
        if (ChildRules.Measuring(mark.Role) is { } refusal)
            return new PhEntry(null, [refusal]);
        PhEntry entry = PhEntry.Read(form, jar, household.Zone, Now, mark);
        if (entry.Measurement is not { } measurement)
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

    /// <summary>Says that a jar stands somewhere else; what was wrong, or nothing.</summary>
    public async Task<IReadOnlyList<Refusal>> MoveAsync(Jar jar, MoveForm form, Guid id, CancellationToken cancellationToken)
    {
        Household household = await households.ReadAsync(cancellationToken);
        IReadOnlyList<Place> known = await places.AllAsync(cancellationToken);
        var reader = new FieldReader();
        Place? place = known.FirstOrDefault(each => each.Name.Equals(form.Place?.Trim(), StringComparison.OrdinalIgnoreCase));
        if (place is null)
            reader.Refuse("place", form.Place, $"one of {string.Join(", ", known.Select(each => each.Name))} would be right");
        Instant from = reader.ReadPast("since", form.At, household.Zone, Now, jar.PackedAt);
        if (place is not null && reader.Refusals.Count == 0 && jar.PlacementAt(from).PlaceId != place.Id)
        {
            await jars.MoveAsync(new JarPlacement { Id = id, JarId = jar.Id, PlaceId = place.Id, From = from }, cancellationToken);
            await renewal.RunAsync(jar.Number, cancellationToken);
        }
        return reader.Refusals;
    }

    /// <summary>Takes back what was entered. False if it is not of this jar or was taken back before.</summary>
    public async Task<bool> TakeBackAsync(Jar jar, Guid observation, string by, CancellationToken cancellationToken)
    {
        if (!jar.Observations.Exists(each => each.Id == observation))
            return false;
        bool taken = await jars.CorrectAsync(observation, Now, by, null, cancellationToken);
        await renewal.RunAsync(jar.Number, cancellationToken);
        return taken;
    }
}
