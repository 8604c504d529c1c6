using FermentWatch.Kitchen.PuttingUp;

namespace FermentWatch.Service.Demo.Household;

/// <summary>Jars put up together by the invented household, and what was done with the first of them.</summary>
/// <param name="DaysAgo">When they were packed, days before the demo began.</param>
/// <param name="Form">What was typed to put them up, without the day.</param>
/// <param name="Acts">What was done with the first jar of the lot since.</param>
internal sealed record InventedLot(double DaysAgo, PutUpForm Form, params InventedAct[] Acts);

/// <summary>A sensor of the invented household.</summary>
/// <param name="Slug">Its name in topics.</param>
/// <param name="Name">What the household calls it.</param>
/// <param name="Room">The room it measures, or in which the jar with its probe stands.</param>
/// <param name="InJar">The jar its probe is in, by the jar's name; null if it measures the room.</param>
/// <param name="Period">How often it reports while the demo runs.</param>
internal sealed record InventedSensor(string Slug, string Name, string Room, string? InJar, TimeSpan Period);
