namespace FermentWatch.Service.Api.Answers;

/// <summary>Where a calendar is fetched.</summary>
/// <param name="Path">Its address on this service; a secret.</param>
public sealed record CalendarAddressAnswer(string Path);
