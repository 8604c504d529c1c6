using FermentWatch.Kitchen.Notices;

namespace FermentWatch.Service.Api.Answers;

/// <summary>How a test message ended.</summary>
/// <param name="Result">Whether the receiver took it.</param>
/// <param name="Trouble">What went wrong; null if it was taken.</param>
public sealed record TestAnswer(DeliveryResult Result, string? Trouble);
