namespace FermentWatch.Service.Metrics;

/// <summary>Whether a collector may read figures of the service at <c>/metrics</c>, in the text form of Prometheus.</summary>
public sealed class MetricsOptions
{
    /// <summary>Whether the page is there. It asks for no sign-in, and names no person. Default: false.</summary>
    public bool Enabled { get; set; }

    /// <summary>Whether others than this machine may read it. Default: false.</summary>
    public bool OpenToNetwork { get; set; }

    /// <summary>Everything wrong with the settings: which, what came, what would be right.</summary>
    public IEnumerable<string> Errors()
    {
        if (OpenToNetwork && !Enabled)
            yield return "OpenToNetwork is true, and there is nothing to open; Metrics:Enabled=true belongs beside it.";
    }
}
