using Refrigerant.Recovery.Fluids.Helmholtz;

namespace Refrigerant.Recovery.Fluids.Data;

/// <summary>R-134a, 1,1,1,2-tetrafluoroethane. The constants are those of the publication in <see cref="PureFluidData.Source"/>.</summary>
internal static class R134a
{
    public static PureFluidData Create() => new()
    {
        Designation = "R-134a",
        Name = "1,1,1,2-tetrafluoroethane",
        CasNumber = "811-97-2",
        Source = "Reiner Tillner-Roth and Hans Dieter Baehr, (1994), A International Standard Formulation for the "
            + "Thermodynamic Properties of 1,1,1,2-Tetrafluoroethane (HFC-134a) for Temperatures from 170 K to 455 K "
            + "and Pressures up to 70 MPa, J. Phys. Chem. Ref. Data, vol. 23, 657-729, doi:10.1063/1.555958",
        MolarMass = 0.102032,
        GasConstant = 8.314471,
        ReducingTemperature = 374.18,
        ReducingMolarDensity = 4978.830171000001,
        CriticalTemperature = 374.21,
        CriticalPressure = 4059280,
        CriticalMolarDensity = 5017.053,
        AcentricFactor = 0.32684,
        MinimumTemperature = 169.85,
        MaximumTemperature = 455,
        MaximumPressure = 70000000,
        IdealGas = new IdealHelmholtz(
            logTau: -1.629789,
            tauLogTau: 0,
            powers: new double[,]
            {
                { -9.723916, -0.5 },
                { -3.92717, -0.75 },
            },
            planckEinstein: new double[0, 2]),
        Residual = new ResidualTerms
        {
            Power = new double[,]
            {
                { 0.05586817, 2, -0.5, 0 },
                { 0.498223, 1, 0, 0 },
                { 0.02458698, 3, 0, 0 },
                { 0.0008570145, 6, 0, 0 },
                { 0.0004788584, 6, 1.5, 0 },
                { -1.800808, 1, 1.5, 0 },
                { 0.2671641, 1, 2, 0 },
                { -0.04781652, 2, 2, 0 },
                { 0.01423987, 5, 1, 1 },
                { 0.3324062, 2, 3, 1 },
                { -0.007485907, 2, 5, 1 },
                { 0.0001017263, 4, 1, 2 },
                { -0.5184567, 1, 5, 2 },
                { -0.08692288, 4, 5, 2 },
                { 0.2057144, 1, 6, 2 },
                { -0.005000457, 2, 10, 2 },
                { 0.0004603262, 4, 10, 2 },
                { -0.003497836, 1, 10, 3 },
                { 0.006995038, 5, 18, 3 },
                { -0.01452184, 3, 22, 3 },
                { -0.0001285458, 10, 50, 4 },
            },
        },
        SaturationViscosity = new double[,]
        {
            { 201, 0.00084813, 8.0534E-06 },
            { 215.73, 0.00062916, 8.6173E-06 },
            { 230.45, 0.00048766, 9.1691E-06 },
            { 245.18, 0.00038922, 9.7101E-06 },
            { 259.9, 0.000317, 1.0244E-05 },
            { 274.63, 0.00026154, 1.0781E-05 },
            { 289.35, 0.00021739, 1.1338E-05 },
            { 304.08, 0.00018101, 1.1948E-05 },
            { 318.81, 0.0001501, 1.2669E-05 },
            { 333.53, 0.00012295, 1.3616E-05 },
            { 348.26, 9.7987E-05, 1.5067E-05 },
            { 362.98, 7.2766E-05, 1.7969E-05 },
        },
    };
}
