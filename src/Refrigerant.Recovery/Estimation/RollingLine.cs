namespace Refrigerant.Recovery.Estimation;

/// <summary>The last readings of something, and straight lines through those of the last seconds. Fixed memory.</summary>
internal sealed class RollingLine
{
    private const int Fewest = 5;

    private readonly double[] _times;
    private readonly double[] _values;
    private int _count;

    public RollingLine(int capacity)
    {
        _times = new double[capacity];
        _values = new double[capacity];
    }

    public void Clear() => _count = 0;

    public void Add(double time, double value)
    {
        int at = _count % _times.Length;
        _times[at] = time;
        _values[at] = value;
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
            double t = _times[at] - now;
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
        level = (sumV - (slope * sumT)) / n;
        return true;
    }
}
