using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Places;
using FermentWatch.Kitchen.RoundAnswers;
using FermentWatch.Kitchen.Typed;
using NodaTime;
using NodaTime.Extensions;

namespace FermentWatch.Acts.Jars;

/// <summary>Says that a jar stands somewhere else.</summary>
[OpenToRecorders]
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
        Instant from = reader.ReadPast("since", form.At, household.Zone, mark.At(clock.GetUtcNow().ToInstant()), jar.PackedAt);
        if (place is null || reader.Refusals.Count > 0)
            return new AnswerOutcome([], [], reader.Refusals);
        JarPlacement? Filed(Guid id) => jar.Placements.Find(each => each.Id == id);
        SentForm sent = SentForm.Of(mark.Id, $"{place.Id:N}", mark.Again, id => Filed(id) is { } filed ? $"{filed.PlaceId:N}" : null);
        if (sent.IsAskedAbout)
            return Done with { Asked = AskedAgain(known.First(each => each.Id == Filed(mark.Id)!.PlaceId)) };
        if (sent.Corrects)
        {
            JarPlacement wrong = Filed(mark.Id)!;
            await takeBack.TakeBackAsync(jar, wrong, mark, cancellationToken);
            from = string.IsNullOrWhiteSpace(form.At) ? wrong.From : from;
        }
        if (!sent.IsFiled && (sent.Id != mark.Id || jar.PlacementAt(from).PlaceId != place.Id))
            await FileAsync(jar, sent.Id, place, from, cancellationToken);
        return Done;
    }

    private static string AskedAgain(Place before) => $"You sent this form before with \"to {before.Name}\". Was that wrong, or are both right?";

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
