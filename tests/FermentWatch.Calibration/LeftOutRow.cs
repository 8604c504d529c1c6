using FermentWatch.Reference.Tests.Published;

namespace FermentWatch.Calibration;

/// <summary>A row predicted without its study.</summary>
/// <param name="Row">The row.</param>
/// <param name="Value">The model's value on the row's day.</param>
/// <param name="ModelLnDay">ln of the model's day over the row's.</param>
/// <param name="RuleLnDay">ln of the one-line rule's day over the row's.</param>
internal sealed record LeftOutRow(PublishedCourse Row, double Value, double ModelLnDay, double RuleLnDay);
