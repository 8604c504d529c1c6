using FermentWatch.Acts.Sensors;

namespace FermentWatch.Web.Pages.Sensors;

/// <summary>The calibration form as the browser sends it.</summary>
public sealed class CalibrationInput
{
    /// <summary>Made when the form was shown.</summary>
    public Guid Id { get; set; }

    public string? Shows { get; set; }

    public List<BufferInput> Buffers { get; set; } = [];

    public string? At { get; set; }

    public CalibrationForm ToForm() => new()
    {
        Shows = Shows, At = At,
        Buffers = [.. Buffers.Select(each => new BufferForm { Buffer = each.Buffer, Shown = each.Shown, Temperature = each.Temperature })],
    };
}

/// <summary>One buffer as the browser sends it.</summary>
public sealed class BufferInput
{
    public string? Buffer { get; set; }

    public string? Shown { get; set; }

    public string? Temperature { get; set; }
}
