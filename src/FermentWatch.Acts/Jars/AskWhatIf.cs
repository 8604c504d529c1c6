using FermentWatch.Kinetics;
using FermentWatch.Kitchen.Forecasts;
using FermentWatch.Kitchen.Places;
using FermentWatch.Kitchen.Typed;
using NodaTime;

namespace FermentWatch.Acts.Jars;

/// <summary>What would become of a jar that is moved today, chilled on a day, or must be ready by one. Writes nothing.</summary>
public sealed class AskWhatIf(JarReader reader)
{
    /// <summary>More places than this would keep others waiting for long.</summary>
    private const int PlacesAsked = 8;

    /// <summary>The answer; null where there is no such jar.</summary>
    /// <param name="number">Number of the jar.</param>
    /// <param name="chill">The day on which it would go into the cold, ISO 8601; empty is today.</param>
    /// <param name="ready">The day by which it should be ready, ISO 8601; empty asks nothing.</param>
    /// <param name="cancellationToken">Gives up.</param>
    public async Task<WhatIfAnswered?> ForAsync(int number, string? chill, string? ready, CancellationToken cancellationToken)
    {
        if (await reader.FindAsync(number, cancellationToken) is not { } view)
            return null;
        var typed = new FieldReader();
        LocalDate chillOn = typed.ReadAhead("chill", chill, view.Calendar.Today, view.Calendar.End) ?? view.Calendar.Today;
        LocalDate? readyOn = typed.ReadAhead("ready", ready, view.Calendar.Today, view.Calendar.End);
        if (view.Forecast is null)
            return new WhatIfAnswered(view, [], null, chillOn, readyOn, null, typed.Refusals);
        List<Place> places = [.. view.Places.OrderByDescending(place => place.Id == view.Place.Id).Take(PlacesAsked)];
        Place coldest = places.MinBy(place => place.Typical)!;
        Instant noon = chillOn.At(LocalTime.Noon).InZoneLeniently(view.Household.Zone).ToInstant();
        double chillDay = Math.Max((noon - view.Calendar.Origin).TotalDays, view.NowDay);
        IReadOnlyList<WhatIf> all = await reader.WhatIfAsync(
            view, [.. places.Select(place => (place, view.NowDay)), (coldest, chillDay)], cancellationToken);
        return new WhatIfAnswered(view, [.. all.SkipLast(1)], all is [.., var last] ? last : null, chillOn, readyOn,
            await reader.StillToComeAsync(view, inTheCold: false, cancellationToken), typed.Refusals);
    }
}

/// <summary>What would become of a jar.</summary>
/// <param name="View">The jar as it stands.</param>
/// <param name="Moved">Moved today, where it stands first; empty where nothing is forecast of it.</param>
/// <param name="Chilled">Moved to the coldest place on the day asked for; null likewise.</param>
/// <param name="ChillOn">That day.</param>
/// <param name="ReadyOn">The day by which it should be ready; null where none was asked for.</param>
/// <param name="Ahead">Gas and sugar where it stays; null where nothing is forecast of it.</param>
/// <param name="Refusals">Days that could not be used; the rest is answered as if they were empty.</param>
public sealed record WhatIfAnswered(
    JarView View, IReadOnlyList<WhatIf> Moved, WhatIf? Chilled, LocalDate ChillOn, LocalDate? ReadyOn, StillToCome? Ahead,
    IReadOnlyList<Refusal> Refusals)
{
    /// <summary>The day it was packed, on the household's calendar.</summary>
    public LocalDate PackedOn => View.Jar.PackedAt.InZone(View.Household.Zone).Date;
}
