using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using FermentWatch.Kinetics.Forecasting;
using FermentWatch.Kinetics.Household;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.Places;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Kitchen.Troubles;
using NodaTime;

namespace FermentWatch.Kitchen.Forecasts;

/// <summary>What one forecast is to be made from.</summary>
/// <param name="Jar">The jar.</param>
/// <param name="AsOf">Up to when it knows; follows from the facts, not from when somebody asks.</param>
/// <param name="Name">Names all of it: the same name needs no new forecast.</param>
internal readonly record struct NamedInputs(Jar Jar, Instant AsOf, string Name);

/// <summary>Names everything a forecast is made from, so that one whose inputs have not changed is not made again.</summary>
/// <param name="means">The means around jars.</param>
/// <param name="places">Every place.</param>
/// <param name="household">What finished jars taught; null where none did.</param>
internal sealed class ForecastInputs(MeansOfJars means, IReadOnlyDictionary<Guid, Place> places, HouseholdPrior? household)
{
    /// <summary>The inputs of one jar: looks, notes and sightings that the model does not read are no part of them.</summary>
    /// <param name="jar">The jar, whole.</param>
    /// <param name="closed">End of the last closed quarter hour.</param>
    /// <param name="cancellationToken">Gives up.</param>
    public async Task<NamedInputs> OfAsync(Jar jar, Instant closed, CancellationToken cancellationToken)
    {
        Instant asOf = KnownUntil(jar, closed, await means.NewestAsync(jar, closed, cancellationToken));
        string facts = Hash(string.Join('\n', Forecaster.ModelVersion, household is null ? "" : Text(household),
            Remedies.Widening(jar) is { } done ? $"wider since {done.Id:N}" : "", OwnText(jar, places, IsReadByTheModel)));
        string measured = Hash($"{Text(asOf)}\n{await means.NameAsync(jar, asOf, cancellationToken)}");
        return new NamedInputs(jar, asOf, facts[..JarForecast.FactsLength] + measured[..JarForecast.FactsLength]);
    }

    /// <summary>
    /// The newest fact: a closed mean around the jar, an entry, a move; and at least each UTC day's beginning, so that the span
    /// ahead moves on where nothing is measured.
    /// </summary>
    private static Instant KnownUntil(Jar jar, Instant closed, Instant? newestMean) => jar.Standing.Where(IsReadByTheModel).Select(each => each.At)
        .Concat(jar.Placements.Select(placement => placement.From)).Append(jar.PackedAt).Select(QuarterHour.Floor)
        .Append(QuarterHour.FloorDay(closed)).Append(newestMean ?? Instant.MinValue)
        .Where(fact => fact <= closed).Max();

    /// <summary>What is a jar's own, as far as lessons read it: also how it ended and whether it went well.</summary>
    public static string OwnText(Jar jar, IReadOnlyDictionary<Guid, Place> places) =>
        OwnText(jar, places, each => each is PhMeasurement or Titration or Taste or StageChange or Sighting);

    private static bool IsReadByTheModel(Observation observation) =>
        observation is PhMeasurement or Titration or Taste or Sighting { Kind: SightingKind.Gas };

    /// <summary>An observation never changes, so its id says all of it.</summary>
    private static string OwnText(Jar jar, IReadOnlyDictionary<Guid, Place> places, Func<Observation, bool> isRead) => string.Join('|',
        [jar.Id.ToString("N"), jar.Target.ToString(), RecipeText(jar),
            .. jar.Placements.OrderBy(placement => placement.Id)
                .Select(placement => $"{placement.Id:N}{placement.PlaceId:N}{Text(placement.From)}{places[placement.PlaceId].Typical}"),
            .. jar.Standing.Where(isRead).Select(each => $"{each.Id:N}")]);

    /// <summary>What went in, which may be corrected later.</summary>
    private static string RecipeText(Jar jar) => string.Create(CultureInfo.InvariantCulture,
        $"{Text(jar.PackedAt)}/{string.Join(',', jar.Portions)}/{jar.Cut}/{jar.AddedWaterKilograms:R}/{jar.Salting}/{jar.VesselLitres:R}"
        + $"{(jar.Starter is { } starter ? $"/{starter}" : "")}{(jar.Vinegar is { } vinegar ? $"/{vinegar}" : "")}");

    /// <summary>A short name for a long text.</summary>
    public static string Hash(string text) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text)));

    private static string Text(Instant instant) => instant.ToUnixTimeMilliseconds().ToString(CultureInfo.InvariantCulture);

    private static string Text(HouseholdPrior prior) => string.Create(CultureInfo.InvariantCulture,
        $"{prior.LnRateMean:R}/{prior.LnRateDeviation:R}/{prior.LnTasteMean:R}/{prior.LnTasteDeviation:R}");
}
