namespace FermentWatch.Service.Pages.Sensors;

/// <summary>One buffer as the browser sends it.</summary>
public sealed class BufferInput
{
    public string? Buffer { get; set; }

    public string? Shown { get; set; }

    public string? Temperature { get; set; }
}
