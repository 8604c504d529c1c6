using FermentWatch.Kinetics;
using SkiaSharp;

namespace FermentWatch.Web.Pages.Photos;

/// <summary>
/// Makes a picture small, upright, and silent about where and by what it was taken: only its pixels are kept. Whatever the file says of
/// itself, the work stays below <see cref="MostMemory"/>: pixels are counted before any is decoded, and what can be decoded small is.
/// </summary>
public static class SmallPhoto
{
    /// <summary>Longer side of what is kept, pixels.</summary>
    public const int LongestSide = 1280;

    /// <summary>Longer side of what stands on a row, pixels: twice its size on the page, for screens that have them.</summary>
    public const int OnARow = 240;

    /// <summary>Largest file that is taken, bytes.</summary>
    public const int LargestFile = 20 << 20;

    /// <summary>Most memory that one picture takes while it is made small, bytes: file, decoder and pixels together.</summary>
    public const int MostMemory = 200 << 20;

    /// <summary>Pixels of a picture that is decoded line by line and small at once (JPEG as cameras write it).</summary>
    private const long MostPixelsByLine = 120_000_000;

    /// <summary>Pixels of any other: a decoder holds all of it, an interlaced PNG of 16 bits with 8 bytes each beside our 4.</summary>
    private const long MostPixelsAtOnce = 9_000_000;

    private const int JpegQuality = 80, JpegScales = 8;

    private static readonly SKSamplingOptions Smooth = new(SKFilterMode.Linear, SKMipmapMode.Linear);

    /// <summary>The picture as a small JPEG, or why it cannot be used.</summary>
    /// <param name="file">JPEG, PNG or WebP as a phone sends it, at most <see cref="LargestFile"/> bytes.</param>
    /// <param name="longestSide">Its longer side at most, pixels.</param>
    public static (byte[]? Jpeg, Refusal? Refusal) Of(Stream file, int longestSide = LongestSide)
    {
        using SKData data = SKData.Create(file);
        using SKCodec? codec = SKCodec.Create(data);
        if (codec is not { EncodedFormat: SKEncodedImageFormat.Jpeg or SKEncodedImageFormat.Png or SKEncodedImageFormat.Webp,
            Info: { Width: > 0, Height: > 0 } })
            return (null, new Refusal("photo", "a file that is no picture", "a JPEG, PNG or WebP picture would be right"));
        bool byLine = codec.EncodedFormat == SKEncodedImageFormat.Jpeg && JpegHead.IsReadByLine(data.AsSpan());
        long most = byLine ? MostPixelsByLine : MostPixelsAtOnce;
        if ((long)codec.Info.Width * codec.Info.Height > most)
            return (null, new Refusal("photo", $"{codec.Info.Width} x {codec.Info.Height} pixels",
                $"a picture of at most {most / 1_000_000} million pixels would be right"));
        SKSizeI kept = Kept(codec.Info, longestSide);
        using SKBitmap? decoded = Decode(codec, kept);
        if (decoded is null)
            return (null, new Refusal("photo", "a picture that breaks off", "a whole picture would be right"));
        using SKBitmap small = decoded.Resize(new SKImageInfo(kept.Width, kept.Height), Smooth);
        using SKBitmap upright = Upright(small, codec.EncodedOrigin);
        using SKData jpeg = upright.Encode(SKEncodedImageFormat.Jpeg, JpegQuality);
        return (jpeg.ToArray(), null);
    }

    private static SKSizeI Kept(SKImageInfo picture, int longestSide)
    {
        double scale = Math.Min(1, (double)longestSide / Math.Max(picture.Width, picture.Height));
        return new SKSizeI(Math.Max(1, (int)Math.Round(picture.Width * scale)), Math.Max(1, (int)Math.Round(picture.Height * scale)));
    }

    /// <summary>The pixels in the smallest size the decoder makes that is not below what is kept; null where the file breaks off.</summary>
    private static SKBitmap? Decode(SKCodec codec, SKSizeI kept)
    {
        double scale = Math.Max((double)kept.Width / codec.Info.Width, (double)kept.Height / codec.Info.Height);
        SKSizeI size = codec.GetScaledDimensions((float)(Math.Ceiling(scale * JpegScales) / JpegScales));
        var picture = new SKBitmap(new SKImageInfo(size.Width, size.Height, SKImageInfo.PlatformColorType, SKAlphaType.Premul));
        if (codec.GetPixels(picture.Info, picture.GetPixels()) is SKCodecResult.Success)
            return picture;
        picture.Dispose();
        return null;
    }

    /// <summary>Turns the pixels the way the camera was held: the mark that says so is not kept.</summary>
    private static SKBitmap Upright(SKBitmap picture, SKEncodedOrigin origin)
    {
        bool onItsSide = origin is SKEncodedOrigin.LeftTop or SKEncodedOrigin.RightTop or SKEncodedOrigin.RightBottom or SKEncodedOrigin.LeftBottom;
        (int width, int height) = onItsSide ? (picture.Height, picture.Width) : (picture.Width, picture.Height);
        var upright = new SKBitmap(new SKImageInfo(width, height));
        using var canvas = new SKCanvas(upright);
        canvas.Clear(SKColors.White);
        canvas.Concat(Turn(origin, width, height));
        canvas.DrawBitmap(picture, 0, 0, new SKSamplingOptions(SKFilterMode.Linear));
        return upright;
    }

    private static SKMatrix Turn(SKEncodedOrigin origin, float width, float height) => origin switch
    {
        SKEncodedOrigin.TopRight => new SKMatrix(-1, 0, width, 0, 1, 0, 0, 0, 1),
        SKEncodedOrigin.BottomRight => new SKMatrix(-1, 0, width, 0, -1, height, 0, 0, 1),
        SKEncodedOrigin.BottomLeft => new SKMatrix(1, 0, 0, 0, -1, height, 0, 0, 1),
        SKEncodedOrigin.LeftTop => new SKMatrix(0, 1, 0, 1, 0, 0, 0, 0, 1),
        SKEncodedOrigin.RightTop => new SKMatrix(0, -1, width, 1, 0, 0, 0, 0, 1),
        SKEncodedOrigin.RightBottom => new SKMatrix(0, -1, width, -1, 0, height, 0, 0, 1),
        SKEncodedOrigin.LeftBottom => new SKMatrix(0, 1, 0, -1, 0, height, 0, 0, 1),
        _ => SKMatrix.Identity,
    };
}
