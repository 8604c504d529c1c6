using System.Collections.Concurrent;
using System.Globalization;
using System.Xml.Linq;
using SkiaSharp;

namespace FermentWatch.Web.Pages.Layout;

/// <summary>The jar of <c>jar.svg</c> on paper, as phones want it for their first page: they take no drawing, only dots.</summary>
internal static class AppIcon
{
    /// <summary>How far the drawing reaches: phones cut the corners away, down to a circle of four fifths (W3C manifest, maskable icons).</summary>
    private const float Share = 0.86f;

    private static readonly SKColor Paper = SKColor.Parse("#f5eedf");
    private static readonly int[] Sides = [180, 192, 512];
    private static readonly ConcurrentDictionary<int, byte[]> Drawn = [];

    public static void MapAppIcon(this WebApplication app) => app.MapGet("/icon-{side:int}.png", (int side, HttpResponse response) =>
    {
        if (!Sides.Contains(side))
            return Results.NotFound();
        response.Headers.CacheControl = "public, max-age=86400";
        return Results.Bytes(Drawn.GetOrAdd(side, Png), "image/png");
    }).AllowAnonymous().ExcludeFromDescription();

    private static byte[] Png(int side)
    {
        using var picture = new SKBitmap(side, side);
        using var canvas = new SKCanvas(picture);
        canvas.Clear(Paper);
        using Stream content = BuiltInFiles.Provider.GetFileInfo("jar.svg").CreateReadStream();
        XElement drawing = XDocument.Load(content).Root!;
        float units = float.Parse(drawing.Attribute("viewBox")!.Value.Split(' ')[^1], CultureInfo.InvariantCulture);
        canvas.Translate(side * (1 - Share) / 2, side * (1 - Share) / 2);
        canvas.Scale(side * Share / units);
        foreach (XElement path in drawing.Elements())
            Draw(canvas, path);
        using SKData png = picture.Encode(SKEncodedImageFormat.Png, 100);
        return png.ToArray();
    }

    private static void Draw(SKCanvas canvas, XElement path)
    {
        using SKPath outline = SKPath.ParseSvgPathData(path.Attribute("d")!.Value);
        using var paint = new SKPaint { IsAntialias = true, StrokeCap = SKStrokeCap.Round, StrokeJoin = SKStrokeJoin.Round };
        if (path.Attribute("fill") is { Value: not "none" } fill)
        {
            paint.Color = SKColor.Parse(fill.Value);
            canvas.DrawPath(outline, paint);
        }
        if (path.Attribute("stroke") is not { } stroke)
            return;
        (paint.Style, paint.Color) = (SKPaintStyle.Stroke, SKColor.Parse(stroke.Value));
        paint.StrokeWidth = float.Parse(path.Attribute("stroke-width")!.Value, CultureInfo.InvariantCulture);
        canvas.DrawPath(outline, paint);
    }
}
