namespace FermentWatch.Kitchen.Readings;

/// <summary>How often one topic was rejected for one reason, with the last example.</summary>
public sealed record RejectCount(Reject Last, long Count);
