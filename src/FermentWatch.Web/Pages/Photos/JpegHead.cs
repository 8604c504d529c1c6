namespace FermentWatch.Web.Pages.Photos;

/// <summary>
/// What the head of a JPEG tells of the memory its decoder takes: a picture in one scan is read line by line, one in several scans
/// (progressive, or colour by colour) is held as a whole, with 2 bytes a coefficient (ITU-T T.81, annexes B and G).
/// </summary>
internal static class JpegHead
{
    private const byte Marker = 0xFF, Baseline = 0xC0, Extended = 0xC1, LastFrame = 0xCF, Tables = 0xC4, Arithmetic = 0xCC, Scan = 0xDA;

    /// <summary>Whether all of it comes in one scan.</summary>
    public static bool IsReadByLine(ReadOnlySpan<byte> file)
    {
        int colours = 0, at = 2;
        while (at + 4 < file.Length && file[at] == Marker)
        {
            byte kind = file[at + 1];
            int length = (file[at + 2] << 8) | file[at + 3];
            if (kind == Marker)
                at++;
            else if (kind == Scan)
                return colours > 0 && file[at + 4] == colours;
            else
            {
                if (kind is Baseline or Extended && at + 9 < file.Length)
                    colours = file[at + 9];
                else if (kind is > Extended and <= LastFrame and not Tables and not Arithmetic)
                    return false;
                at += 2 + length;
            }
        }
        return false;
    }
}
