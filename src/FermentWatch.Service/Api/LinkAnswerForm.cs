namespace FermentWatch.Service.Api;

/// <summary>All well, or later, by a link.</summary>
/// <param name="Opened">Whether the jars that were to be opened were opened.</param>
/// <param name="Later">Asks again in two hours instead.</param>
public sealed record LinkAnswerForm(bool Opened, bool Later = false);
