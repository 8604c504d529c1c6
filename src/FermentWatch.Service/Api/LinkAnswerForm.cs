namespace FermentWatch.Service.Api;

/// <summary>All well, by a link.</summary>
/// <param name="Opened">Whether the jars that were to be opened were opened.</param>
public sealed record LinkAnswerForm(bool Opened);
