namespace FermentWatch.Storage.Archives.Taking;

/// <summary>The lines of a file, one in memory at a time; a line that never ends is refused.</summary>
internal sealed class RecordLines(Stream from)
{
    private const int Longest = 16 << 20;

    private byte[] _buffer = new byte[1 << 16];
    private int _start, _end;
    private bool _isAtEnd;

    /// <summary>The number of the line that was read last, from 1.</summary>
    internal long Number { get; private set; }

    /// <summary>The next line without its end, valid until the next call; false behind the last.</summary>
    /// <exception cref="InvalidDataException">A line is longer than any of ours.</exception>
    internal bool TryRead(out ReadOnlyMemory<byte> line)
    {
        int looked = _start;
        while (true)
        {
            int found = _buffer.AsSpan(looked, _end - looked).IndexOf((byte)'\n');
            if (found >= 0 || _isAtEnd)
                return Take(found >= 0 ? looked + found : _end, out line);
            int kept = _end - _start;
            if (kept > Longest)
                throw new InvalidDataException(FormattableString.Invariant($"line {Number + 1} is longer than {Longest >> 20} MB"));
            if (_start > 0)
                Array.Copy(_buffer, _start, _buffer, 0, kept);
            else if (kept == _buffer.Length)
                Array.Resize(ref _buffer, 2 * kept);
            (_start, _end, looked) = (0, kept, kept);
            int read = from.Read(_buffer, _end, _buffer.Length - _end);
            _isAtEnd = read == 0;
            _end += read;
        }
    }

    private bool Take(int end, out ReadOnlyMemory<byte> line)
    {
        line = _buffer.AsMemory(_start, end - _start);
        if (_start == _end)
            return false;
        _start = Math.Min(end + 1, _end);
        Number++;
        return true;
    }
}
