using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Rendering;

namespace FermentWatch.Web.Pages.Charts;

/// <summary>Text in a picture. A component of its own, because Razor keeps the tag of SVG's text for itself.</summary>
public sealed class ChartText : ComponentBase
{
    [Parameter, EditorRequired] public required string Class { get; set; }

    [Parameter, EditorRequired] public required double X { get; set; }

    [Parameter, EditorRequired] public required double Y { get; set; }

    /// <summary>Which part of the text lies at <see cref="X"/>: <c>start</c>, <c>middle</c> or <c>end</c>.</summary>
    [Parameter] public string Anchor { get; set; } = "start";

    [Parameter, EditorRequired] public required string Words { get; set; }

    protected override void BuildRenderTree(RenderTreeBuilder builder)
    {
        builder.OpenElement(0, "text");
        builder.AddAttribute(1, "class", Class);
        builder.AddAttribute(2, "x", Svg.Number(X));
        builder.AddAttribute(3, "y", Svg.Number(Y));
        builder.AddAttribute(4, "text-anchor", Anchor);
        builder.AddContent(5, Words);
        builder.CloseElement();
    }
}
