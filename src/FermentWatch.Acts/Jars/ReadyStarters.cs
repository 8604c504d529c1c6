using FermentWatch.Kitchen.Forecasts;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.PuttingUp;
using NodaTime;
using NodaTime.Extensions;

namespace FermentWatch.Acts.Jars;

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
