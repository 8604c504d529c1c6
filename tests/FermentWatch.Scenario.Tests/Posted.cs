using System.Text.Json;
using NodaTime;

namespace FermentWatch.Scenario.Tests;

/// <summary>One webhook as it came in.</summary>
/// <param name="Id">The header <c>webhook-id</c>, by which a receiver drops a repeat.</param>
/// <param name="SentAt">The header <c>webhook-timestamp</c>: the steered clock at sending.</param>
/// <param name="Path">The path it was posted to.</param>
/// <param name="Body">The notice.</param>
internal sealed record Posted(string Id, Instant SentAt, string Path, JsonElement Body);
