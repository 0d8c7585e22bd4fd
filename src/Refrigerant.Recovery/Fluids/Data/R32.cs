using Refrigerant.Recovery.Fluids.Helmholtz;

namespace Refrigerant.Recovery.Fluids.Data;

/// <summary>R-32, difluoromethane. The constants are those of the publication in <see cref="PureFluidData.Source"/>.</summary>
internal static class R32
{
    public static PureFluidData Create() => new()
    {
        Designation = "R-32",
        Name = "difluoromethane",
        CasNumber = "75-10-5",
        Source = "R. Tillner-Roth and A. Yokozeki, (1997), An international standard equation of state for "
            + "difluoromethane (R-32) for temperatures from the triple point at 136.34 K to 435 K and pressures up "
            + "to 70 MPa, J. Phys. Chem. Ref. Data, vol. 26, 1273-1328, doi:10.1063/1.556002",
        MolarMass = 0.052024,
        GasConstant = 8.314471,
        ReducingTemperature = 351.255,
        ReducingMolarDensity = 8150.084599999999,
        CriticalTemperature = 351.255,
        CriticalPressure = 5782000,
        CriticalMolarDensity = 8150.084599999999,
        AcentricFactor = 0.2769,
        MinimumTemperature = 136.34,
        MaximumTemperature = 435,
        MaximumPressure = 70000000,
        IdealGas = new IdealHelmholtz(
            logTau: 3.004486,
            tauLogTau: 0,
            powers: new double[0, 2],
            planckEinstein: new double[,]
            {
                { 1.160761, 2.2718538 },
                { 2.645151, 11.914421 },
                { 5.794987, 5.1415638 },
                { 1.129475, 32.768217 },
            }),
        Residual = new ResidualTerms
        {
            Power = new double[,]
            {
                { 1.046634, 1, 0.25, 0 },
                { -0.5451165, 2, 1, 0 },
                { -0.002448595, 5, -0.25, 0 },
                { -0.04877002, 1, -1, 0 },
                { 0.03520158, 1, 2, 0 },
                { 0.00162275, 3, 2, 0 },
                { 2.377225E-05, 8, 0.75, 0 },
                { 0.029149, 4, 0.25, 0 },
                { 0.003386203, 4, 18, 4 },
                { -0.004202444, 4, 26, 3 },
                { 0.0004782025, 8, -1, 1 },
                { -0.005504323, 3, 25, 4 },
                { -0.02418396, 5, 1.75, 1 },
                { 0.4209034, 1, 4, 2 },
                { -0.4616537, 1, 5, 2 },
                { -1.200513, 3, 1, 1 },
                { -2.59155, 1, 1.5, 1 },
                { -1.400145, 2, 1, 1 },
                { 0.8263017, 3, 0.5, 1 },
            },
        },
        SaturationViscosity = new double[,]
        {
            { 201, 0.00040938, 8.9218E-06 },
            { 213.7, 0.00033598, 9.5054E-06 },
            { 226.4, 0.00027976, 1.0093E-05 },
            { 239.1, 0.00023536, 1.0686E-05 },
            { 251.81, 0.00019942, 1.1289E-05 },
            { 264.51, 0.00016978, 1.1908E-05 },
            { 277.21, 0.00014493, 1.2557E-05 },
            { 289.91, 0.00012379, 1.3261E-05 },
            { 302.61, 0.00010551, 1.4067E-05 },
            { 315.31, 8.9405E-05, 1.5074E-05 },
            { 328.02, 7.473E-05, 1.6515E-05 },
            { 340.72, 6.0346E-05, 1.9186E-05 },
        },
    };
}
