namespace Refrigerant.Recovery.Samples.Controller;

/// <summary>What the sensors show at a tick. Pressures are absolute.</summary>
/// <param name="Seconds">Time since the start.</param>
/// <param name="AppliancePascals">Pressure in the appliance.</param>
/// <param name="DischargePascals">Pressure at the machine's outlet.</param>
/// <param name="CylinderKilograms">Content of the cylinder: the scale less the tare weight.</param>
internal readonly record struct Readings(double Seconds, double AppliancePascals, double DischargePascals, double CylinderKilograms);
