"""What the guide says: pages and steps as frozen models, composed from a study."""
