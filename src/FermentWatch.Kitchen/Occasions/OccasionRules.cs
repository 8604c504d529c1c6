namespace FermentWatch.Kitchen.Occasions;

/// <summary>Everything a household may be told of besides the round, as things stand.</summary>
public static class OccasionRules
{
    /// <summary>What holds in a scene, told before or not.</summary>
    public static IReadOnlyList<Occasion> Of(Scene scene) =>
    [
        .. AcidOccasions.Of(scene), .. TroubleOccasions.Of(scene), .. WarmthOccasions.Of(scene), .. TastingOccasions.Of(scene), .. StoreOccasions.Of(scene),
        .. scene.Sensors.Select(Sensor),
    ];

    private static Occasion Sensor(SensorConcern concern) =>
        new(concern.Kind, concern.SensorId, concern.Cause, $"{Headline(concern.Kind)}, {concern.Name}", [], concern.Words) { Lasting = true };

    private static string Headline(OccasionKind kind) => kind switch
    {
        OccasionKind.SensorSilent => "Sensor silent",
        OccasionKind.CalibrationDue => "Calibration due",
        _ => "Sensor wrong",
    };
}
