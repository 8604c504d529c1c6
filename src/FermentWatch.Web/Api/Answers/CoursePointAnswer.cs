using FermentWatch.Kinetics.Forecasting;

namespace FermentWatch.Web.Api.Answers;

/// <summary>The jar as it is expected at one time.</summary>
/// <param name="Day">Days after packing.</param>
/// <param name="TemperatureCelsius">Inside the jar.</param>
/// <param name="PhP10">One member in ten lies below.</param>
/// <param name="PhP50">The middle.</param>
/// <param name="PhP90">One member in ten lies above.</param>
/// <param name="AcidityPercentLacticP10">One member in ten lies below.</param>
/// <param name="AcidityPercentLacticP50">The middle.</param>
/// <param name="AcidityPercentLacticP90">One member in ten lies above.</param>
public sealed record CoursePointAnswer(
    double Day, double TemperatureCelsius, double PhP10, double PhP50, double PhP90,
    double AcidityPercentLacticP10, double AcidityPercentLacticP50, double AcidityPercentLacticP90)
{
    public static CoursePointAnswer Of(CoursePoint point) => new(point.Day, point.JarCelsius, point.Ph.P10, point.Ph.P50, point.Ph.P90,
        point.AcidityPercentLactic.P10, point.AcidityPercentLactic.P50, point.AcidityPercentLactic.P90);
}
