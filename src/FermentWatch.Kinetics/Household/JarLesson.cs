namespace FermentWatch.Kinetics.Household;

/// <summary>What a finished jar taught, under the published prior: how fast its flora was and how sour the household likes it.</summary>
/// <param name="LnRateMean">ln of the rate factor, mean.</param>
/// <param name="LnRateDeviation">Its standard deviation.</param>
/// <param name="LnTasteMean">ln of the household's level over the one it chose, mean.</param>
/// <param name="LnTasteDeviation">Its standard deviation.</param>
public sealed record JarLesson(double LnRateMean, double LnRateDeviation, double LnTasteMean, double LnTasteDeviation);
