namespace FermentWatch.Kitchen.Tests.Doubles;

/// <summary>The process ended here.</summary>
internal sealed class KilledException : Exception;
