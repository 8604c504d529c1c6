namespace FermentWatch.Intake.Embedded.Listening;

/// <summary>
/// Follows the framing of an MQTT stream (a byte of type, a length of one to four bytes, a body) and tells of a packet that is
/// longer than allowed before its body is read. Without it anybody who can open a connection makes the library reserve 256 MB.
/// </summary>
public sealed class FrameLimit(int longestBytes)
{
    private const int MostLengthBits = 28;

    private Place _place = Place.Type;
    private int _length;
    private int _lengthBits;

    private enum Place
    {
        Type,
        Length,
        Body,
    }

    /// <summary>Longest body of a packet that is let through, in bytes. May be raised once a client is known.</summary>
    public int LongestBytes { get; set; } = longestBytes;

    /// <summary>Takes note of bytes that came in; false if they announce a packet that is too long, or no packet at all.</summary>
    public bool Allows(ReadOnlySpan<byte> received)
    {
        while (!received.IsEmpty)
        {
            int taken = 1;
            switch (_place)
            {
                case Place.Type:
                    (_place, _length, _lengthBits) = (Place.Length, 0, 0);
                    break;
                case Place.Length:
                    if (!TakesLength(received[0]))
                        return false;
                    break;
                case Place.Body:
                    taken = Math.Min(_length, received.Length);
                    _length -= taken;
                    if (_length == 0)
                        _place = Place.Type;
                    break;
            }
            received = received[taken..];
        }
        return true;
    }

    private bool TakesLength(byte part)
    {
        _length |= (part & 0x7F) << _lengthBits;
        _lengthBits += 7;
        if (_length > LongestBytes)
            return false;
        bool more = (part & 0x80) != 0;
        if (!more)
            _place = _length == 0 ? Place.Type : Place.Body;
        return !more || _lengthBits < MostLengthBits;
    }
}
