namespace FermentWatch.Service.CommandLine.SaltByWeight;

/// <summary>What was typed after <c>salt</c>, as typed.</summary>
/// <param name="ProduceMass">Prepared vegetables.</param>
/// <param name="Percent">Salt wanted, per cent of vegetables and liquid together.</param>
/// <param name="Water">Water added, by mass or volume.</param>
/// <param name="Vinegar">Vinegar added, by mass or volume.</param>
/// <param name="Salt">Salt that there is, by mass or by the spoon.</param>
/// <param name="Brine">Brine wanted, per cent by mass.</param>
/// <param name="SaltKind">Kind of salt.</param>
internal sealed record SaltInput(
    string? ProduceMass, string? Percent, string? Water, string? Vinegar, string? Salt, string? Brine, string? SaltKind);
