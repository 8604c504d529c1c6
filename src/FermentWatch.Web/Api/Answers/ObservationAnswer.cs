using FermentWatch.Kitchen.AcidLines;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.Words;
using NodaTime;

namespace FermentWatch.Web.Api.Answers;

/// <summary>What was entered about a jar.</summary>
/// <param name="Id">By which it can be taken back or corrected.</param>
/// <param name="Kind">The kind of observation.</param>
/// <param name="At">When it was seen.</param>
/// <param name="By">Who saw it.</param>
/// <param name="Words">What it says.</param>
/// <param name="Ph">The pH, where it is a measurement.</param>
/// <param name="WhyItDoesNotCount">Why a pH does not count for the acid line; null where it does.</param>
/// <param name="Note">The note, if any.</param>
/// <param name="TakenBackAt">When it was taken back; null while it stands.</param>
public sealed record ObservationAnswer(
    Guid Id, string Kind, Instant At, string By, string Words, double? Ph, string? WhyItDoesNotCount, string? Note, Instant? TakenBackAt)
{
    /// <summary>How warm the sample of a pH was, Celsius; null where nobody said.</summary>
    public double? SampleCelsius { get; init; }

    /// <summary>The acidity, where it is a titration: per cent lactic.</summary>
    public double? PercentLactic { get; init; }

    /// <summary>A portion, where it was told as a share: per cent of the full jar.</summary>
    public double? TakenPercent { get; init; }

    /// <summary>A portion, where it was told as a volume: litres at the table.</summary>
    public double? TakenLitres { get; init; }

    /// <summary>A portion, where it was told as a weight: kg at the table.</summary>
    public double? TakenKilograms { get; init; }

    public static ObservationAnswer Of(Jar jar, Observation observation)
    {
        var measurement = observation as PhMeasurement;
        var portion = observation as PortionTaken;
        return new(observation.Id, observation.GetType().Name, observation.At, observation.By, ObservationWords.Of(observation), measurement?.Ph,
            measurement is null ? null : AcidLineWords.WhyNot(AcidLine.Weigh(jar, measurement)), observation.Note, observation.VoidedAt)
        {
            SampleCelsius = measurement?.SampleCelsius, PercentLactic = (observation as Titration)?.PercentLactic,
            TakenPercent = 100 * portion?.Fraction, TakenLitres = portion?.Litres, TakenKilograms = portion?.Kilograms,
        };
    }
}
