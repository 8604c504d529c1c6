namespace FermentWatch.Notices.WebPush;

/// <summary>Lets go of the body of every answer: a push service says all it has to say before it, and one that never ends must not be
/// read.</summary>
internal sealed class HeadOnly(HttpMessageHandler way) : DelegatingHandler(way)
{
    protected override async Task<HttpResponseMessage> SendAsync(HttpRequestMessage request, CancellationToken cancellationToken)
    {
        HttpResponseMessage answer = await base.SendAsync(request, cancellationToken);
        answer.Content.Dispose();
        answer.Content = new ByteArrayContent([]);
        return answer;
    }
}
