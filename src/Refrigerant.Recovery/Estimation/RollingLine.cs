namespace Refrigerant.Recovery.Estimation;

/// <summary>The last readings of something, and straight lines through those of the last seconds. Fixed memory: differences to the first reading, in single precision.</summary>
internal sealed class RollingLine
{
    private const int Fewest = 5;

    private readonly float[] _times;
    private readonly float[] _values;
    private double _timeOrigin;
    private double _valueOrigin;
    private int _count;

    public RollingLine(int capacity)
    {
        _times = new float[capacity];
        _values = new float[capacity];
    }

    public void Clear() => _count = 0;

    public void Add(double time, double value)
    {
        if (_count == 0)
        {
            _timeOrigin = time;
            _valueOrigin = value;
        }

        int at = _count % _times.Length;
        _times[at] = (float)(time - _timeOrigin);
        _values[at] = (float)(value - _valueOrigin);
        _count++;
    }

    /// <summary>Least-squares line through the last seconds: slope a second, and value at its end; false with fewer than five readings.</summary>
    public bool Fit(double now, double seconds, out double slope, out double level)
    {
        double sumT = 0;
        double sumV = 0;
        double sumTT = 0;
        double sumTV = 0;
        int n = 0;
        for (int k = 1; k <= _times.Length && k <= _count; k++)
        {
            int at = (_count - k) % _times.Length;
            double t = _times[at] - (now - _timeOrigin);
            if (-t > seconds)
            {
                break;
            }

            double v = _values[at];
            sumT += t;
            sumV += v;
            sumTT += t * t;
            sumTV += t * v;
            n++;
        }

        slope = level = 0;
        double denominator = (n * sumTT) - (sumT * sumT);
        if (n < Fewest || !(denominator > 0))
        {
            return false;
        }

        slope = ((n * sumTV) - (sumT * sumV)) / denominator;
        level = _valueOrigin + ((sumV - (slope * sumT)) / n);
        return true;
    }
}
