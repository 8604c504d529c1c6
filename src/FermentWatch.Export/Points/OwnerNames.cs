using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Places;
using FermentWatch.Kitchen.Sensors;
using NodaTime;

namespace FermentWatch.Export.Points;

/// <summary>What sensors, jars and places are called in tags, as the records say at present.</summary>
public sealed class OwnerNames
{
    private readonly Dictionary<int, Sensor> _sensors;
    private readonly Dictionary<Guid, Jar> _jars;
    private readonly Dictionary<Guid, string> _places;

    public OwnerNames(IEnumerable<Sensor> sensors, IEnumerable<Jar> jars, IEnumerable<Place> places)
    {
        _sensors = sensors.ToDictionary(sensor => sensor.Key);
        _jars = jars.ToDictionary(jar => jar.Id);
        _places = places.ToDictionary(place => place.Id, place => place.Name);
    }

    /// <summary>The sensor filed under a key, or null.</summary>
    public Sensor? Sensor(int key) => _sensors.GetValueOrDefault(key);

    /// <summary>The jar, or null where it is not among those that were read.</summary>
    public Jar? Jar(Guid id) => _jars.GetValueOrDefault(id);

    /// <summary>The place a jar stood in.</summary>
    public string? PlaceOf(Jar jar, Instant at) => _places.GetValueOrDefault(jar.PlacementAt(at).PlaceId);

    /// <summary>
    /// The place a sensor measured, for a probe that of its jar. False where its jar is not among those that were read; the place
    /// is null where nobody had said one.
    /// </summary>
    public bool TryPlaceOf(Sensor sensor, Instant at, out string? place)
    {
        place = null;
        SensorPlacement? placement = sensor.PlacementAt(at);
        if (placement?.JarId is { } jarId)
        {
            if (Jar(jarId) is not { } jar)
                return false;
            place = PlaceOf(jar, at);
        }
        else if (placement?.PlaceId is { } placeId)
        {
            place = _places.GetValueOrDefault(placeId);
        }
        return true;
    }
}
