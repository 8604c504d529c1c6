namespace FermentWatch.Service.Api.Answers;

/// <summary>The sensor that an offer became.</summary>
/// <param name="Slug">Its name in topics.</param>
public sealed record TakenSensorAnswer(string Slug);
