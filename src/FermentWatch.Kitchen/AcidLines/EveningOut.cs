using FermentWatch.Kinetics.Produce;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Observations;
using NodaTime;

namespace FermentWatch.Kitchen.AcidLines;

/// <summary>
/// How long the pH of a brine with vinegar rises by itself while the vegetables take the acid up: until then brine alone shows no jar
/// below the line, and its rise is no alarm. Acid enters whole cucumbers of 3.8 to 5.1 cm at 0.36 a day (Potts 1986): nineteen in
/// twenty parts after 8.3 days; thinner cuts are this project's own choice.
/// </summary>
public static class EveningOut
{
    /// <summary>Whether a reading is of such a brine: not blended, and from before it has evened out.</summary>
    public static bool IsUnderWay(Jar jar, PhMeasurement measurement) =>
        jar.Vinegar is not null && !measurement.Blended && measurement.At < jar.PackedAt + Duration.FromDays(Days(jar.Cut));

    /// <summary>Days after packing until it has evened out.</summary>
    public static int Days(Cut cut) => cut switch
    {
        Cut.Whole => 9,
        Cut.Pieces => 4,
        Cut.Sliced => 2,
        _ => 1,
    };
}
