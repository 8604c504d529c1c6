using System.Text;
using FermentWatch.Kinetics;
using FermentWatch.Service.Pages.Photos;
using SkiaSharp;

namespace FermentWatch.Service.Tests.Pages;

public class SmallPhotoTests
{
    private const byte HeldUpright = 1, HeldSideways = 6;

    [Fact]
    public void Of_PhoneCameraPicture_IsSmallAndSaysNothingOfWhereItWasTaken()
    {
        byte[] taken = WithExif(Picture(3000, 2000), HeldUpright);
        Assert.Contains("N48.2082", Encoding.Latin1.GetString(taken), StringComparison.Ordinal);

        (byte[]? jpeg, Refusal? refusal) = SmallPhoto.Of(taken);
        Assert.Null(refusal);
        string kept = Encoding.Latin1.GetString(jpeg!);
        Assert.DoesNotContain("Exif", kept, StringComparison.Ordinal);
        Assert.DoesNotContain("N48.2082", kept, StringComparison.Ordinal);
        using SKBitmap small = SKBitmap.Decode(jpeg);
        Assert.Equal((1280, 853), (small.Width, small.Height));
    }

    [Fact]
    public void Of_PictureHeldSideways_IsTurnedUpright()
    {
        // Red on the left as the sensor saw it; turned a quarter to the right, red is on top.
        (byte[]? jpeg, _) = SmallPhoto.Of(WithExif(Picture(400, 200), HeldSideways));
        using SKBitmap upright = SKBitmap.Decode(jpeg);
        Assert.Equal((200, 400), (upright.Width, upright.Height));
        Assert.True(upright.GetPixel(100, 50).Red > 200 && upright.GetPixel(100, 350).Blue > 200);
    }

    [Fact]
    public void Of_SmallPicture_KeepsItsSize()
    {
        (byte[]? jpeg, _) = SmallPhoto.Of(Picture(320, 240));
        using SKBitmap kept = SKBitmap.Decode(jpeg);
        Assert.Equal((320, 240), (kept.Width, kept.Height));
    }

    [Theory]
    [InlineData("")]
    [InlineData("%PDF-1.7 a recipe")]
    public void Of_NoPicture_IsRefusedWithWhatWouldBeRight(string file)
    {
        (byte[]? jpeg, Refusal? refusal) = SmallPhoto.Of(Encoding.ASCII.GetBytes(file));
        Assert.Null(jpeg);
        Assert.Equal("a JPEG, PNG or WebP picture would be right", refusal!.WouldBeRight);
    }

    private static byte[] Picture(int width, int height)
    {
        using var bitmap = new SKBitmap(width, height);
        using (var canvas = new SKCanvas(bitmap))
        using (var red = new SKPaint { Color = SKColors.Red })
        {
            canvas.Clear(SKColors.Blue);
            canvas.DrawRect(0, 0, width / 2f, height, red);
        }
        using SKData jpeg = bitmap.Encode(SKEncodedImageFormat.Jpeg, 90);
        return jpeg.ToArray();
    }

    /// <summary>Puts an APP1 segment after the start of a JPEG: a TIFF header with one entry, the orientation, and a place in clear text.</summary>
    private static byte[] WithExif(byte[] jpeg, byte orientation)
    {
        byte[] place = Encoding.ASCII.GetBytes("N48.2082");
        byte[] exif =
        [
            .. "Exif\0\0"u8, .. "MM"u8, 0, 42, 0, 0, 0, 8, 0, 1, 0x01, 0x12, 0, 3, 0, 0, 0, 1, 0, orientation, 0, 0, 0, 0, 0, 0, .. place,
        ];
        int length = exif.Length + 2;
        return [jpeg[0], jpeg[1], 0xFF, 0xE1, (byte)(length >> 8), (byte)length, .. exif, .. jpeg[2..]];
    }
}
