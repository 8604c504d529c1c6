namespace FermentWatch.Web.Pages.Charts;

/// <summary>A labelled place on an axis.</summary>
/// <param name="At">Where it lies, picture units.</param>
/// <param name="Label">What is written beside it.</param>
public sealed record AxisMark(double At, string Label);
