namespace FermentWatch.Service.Pages.Sensors;

/// <summary>The form of an offer as the browser sends it; the button that was tapped says where.</summary>
public sealed class OfferTapForm
{
    public string? Topic { get; set; }

    public string? ValuePointer { get; set; }

    public string? Unit { get; set; }

    public string? Where { get; set; }
}
