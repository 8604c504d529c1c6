using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Places;
using FermentWatch.Kitchen.RoundAnswers;
using FermentWatch.Kitchen.Typed;
using NodaTime;
using NodaTime.Extensions;

namespace FermentWatch.Acts.Jars;

/// <summary>Says that a jar stands somewhere else.</summary>
public sealed class MoveJar(IJarBook jars, IPlaceBook places, IHouseholdBook households, TakeBackMove takeBack, IForecastRenewal renewal,
    TimeProvider clock)
{
    private static readonly AnswerOutcome Done = new([], [], []);

    /// <summary>What was wrong, what is asked, or nothing.</summary>
    public async Task<AnswerOutcome> DoAsync(Jar jar, MoveForm form, EntryMark mark, CancellationToken cancellationToken)
    {
        if (ChildRules.Moving(mark.Role) is { } refusal)
            return new AnswerOutcome([], [], [refusal]);
        Household household = await households.ReadAsync(cancellationToken);
        IReadOnlyList<Place> known = await places.AllAsync(cancellationToken);
        var reader = new FieldReader();
        Place? place = known.FirstOrDefault(each => each.Name.Equals(form.Place?.Trim(), StringComparison.OrdinalIgnoreCase));
        if (place is null)
            reader.Refuse("place", form.Place, $"one of {string.Join(", ", known.Select(each => each.Name))} would be right");
        Instant from = reader.ReadPast("since", form.At, household.Zone, clock.GetUtcNow().ToInstant(), jar.PackedAt);
        if (place is null || reader.Refusals.Count > 0)
            return new AnswerOutcome([], [], reader.Refusals);
        if (jar.Placements.Find(each => each.Id == mark.Id) is { } sent && sent.PlaceId != place.Id)
            return await ElsewhereAsync(jar, sent, place, string.IsNullOrWhiteSpace(form.At) ? null : from, known, mark, cancellationToken);
        if (jar.PlacementAt(from).PlaceId != place.Id)
            await FileAsync(jar, mark.Id, place, from, cancellationToken);
        return Done;
    }

    /// <summary>The form was sent before with another place.</summary>
    private async Task<AnswerOutcome> ElsewhereAsync(
        Jar jar, JarPlacement sent, Place place, Instant? from, IReadOnlyList<Place> known, EntryMark mark, CancellationToken cancellationToken)
    {
        if (mark.Again == Again.NotSaid)
            return Done with { Asked = $"You sent this form before with \"to {known.First(each => each.Id == sent.PlaceId).Name}\". Was that wrong, or are both right?" };
        if (mark.Again == Again.Correction)
            await takeBack.TakeBackAsync(jar, sent, mark, cancellationToken);
        Instant since = from ?? (mark.Again == Again.Correction ? sent.From : clock.GetUtcNow().ToInstant());
        await FileAsync(jar, AnswerId.Of(mark.Id, place.Id), place, since, cancellationToken);
        return Done;
    }

    private async Task FileAsync(Jar jar, Guid id, Place place, Instant from, CancellationToken cancellationToken)
    {
        await jars.MoveAsync(new JarPlacement { Id = id, JarId = jar.Id, PlaceId = place.Id, From = from }, cancellationToken);
        await renewal.RunAsync(jar.Number, cancellationToken);
    }
}

/// <summary>What somebody typed to say that a jar stands somewhere else now.</summary>
public sealed record MoveForm
{
    /// <summary>Name of the place.</summary>
    public string? Place { get; init; }

    /// <summary>Since when, on the household's clock; empty is now.</summary>
    public string? At { get; init; }
}
