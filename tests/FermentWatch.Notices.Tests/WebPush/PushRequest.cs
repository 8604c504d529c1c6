namespace FermentWatch.Notices.Tests.WebPush;

/// <summary>What a push service got.</summary>
internal sealed record PushRequest(string Method, string Path, IReadOnlyDictionary<string, string> Headers, byte[] Body);
