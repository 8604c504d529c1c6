using FermentWatch.Kinetics.Observation;

namespace FermentWatch.Web.Pages.Charts;

/// <summary>A measured pH in the picture; its shape tells the method.</summary>
/// <param name="X">Picture units from the left.</param>
/// <param name="Y">Picture units from the top.</param>
/// <param name="Method">How it was measured.</param>
public sealed record MeasuredPoint(double X, double Y, PhMethod Method);
