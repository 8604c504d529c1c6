using FermentWatch.Kitchen.PuttingUp;

namespace FermentWatch.Service.Demo.Household;

/// <summary>Jars put up together by the invented household, and what was done with the first of them.</summary>
/// <param name="DaysAgo">When they were packed, days before the demo began.</param>
/// <param name="Form">What was typed to put them up, without the day.</param>
/// <param name="Deeds">What was done with the first jar of the lot since.</param>
internal sealed record InventedLot(double DaysAgo, PutUpForm Form, params Deed[] Deeds);
